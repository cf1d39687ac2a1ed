package org.fallow.rules;

/**
 * What an athlete may do on a day, strictest first; the strictest of several holds.
 */
public enum Clearance {

	/** Stop; a clinician first. */
	REFER,
	/** No training. */
	REST,
	/** No entry today, or not ours to judge: intensity is not cleared. */
	NOT_ASSESSED,
	/** Easy running only. */
	EASY_ONLY,
	/** All training, as programmed. */
	FULL_TRAINING;

	/**
	 * The stricter of two clearances.
	 * @param other the one to compare with
	 * @return this or {@code other}, whichever comes first in the order
	 */
	public Clearance stricterOf(Clearance other) {
		return (this.compareTo(other) <= 0) ? this : other;
	}

}
