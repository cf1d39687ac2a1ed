package org.fallow.entry;

/**
 * How resting heart rate was taken. Readings taken in different ways are different
 * series. A pulse counted over t seconds has a step of 60/t beats per minute.
 */
public enum Method {

	/** Pulse counted for 30 seconds. */
	COUNT_30(2),
	/** Pulse counted for 60 seconds. */
	COUNT_60(1),
	/** Tapped along with the pulse. */
	TAP(0),
	/** Chest strap. */
	STRAP(0),
	/** Device worn overnight. */
	WORN(0),
	/** Any other device. */
	OTHER(0);

	private final double stepBpm;

	Method(double stepBpm) {
		this.stepBpm = stepBpm;
	}

	/**
	 * The step of a counted pulse.
	 * @return bpm between two neighbouring counts, 0 where the reading is not a count
	 */
	public double stepBpm() {
		return this.stepBpm;
	}

}
