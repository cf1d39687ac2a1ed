package org.fallow.baseline;

import org.fallow.entry.Posture;
import org.fallow.rules.RuleSet;

/**
 * Where a morning's resting heart rate lies against the athlete's baseline, lowest first.
 */
public enum RhrFlag {

	/** Unusually low; never counts as recovered. */
	LOW,
	/** Neither low nor on the line or above it. */
	WITHIN,
	/** On the line or above it, below high: told, and asked about. */
	RAISED,
	/** In the range of illness and stress. */
	HIGH,
	/** Nowhere near training: far above the baseline, or too fast for anybody at rest. */
	VERY_HIGH;

	/**
	 * Whether the flag alone asks for rest.
	 * @return true for high and very high
	 */
	public boolean isHigh() {
		return compareTo(HIGH) >= 0;
	}

	/**
	 * Whether a reading is too fast for anybody at rest, whatever the baseline, and
	 * without one too.
	 * @param rhrBpm the reading
	 * @param posture how it was taken
	 * @param rules flag numbers
	 * @return true from 100 bpm lying or sitting, from 120 standing, with the default
	 * rules
	 */
	public static boolean isTooFast(double rhrBpm, Posture posture, RuleSet.Flags rules) {
		return rhrBpm >= tooFastFrom(posture, rules);
	}

	/**
	 * From which reading on it is too fast for anybody at rest.
	 * @param posture how it was taken
	 * @param rules flag numbers
	 * @return bpm
	 */
	public static double tooFastFrom(Posture posture, RuleSet.Flags rules) {
		return (posture == Posture.STANDING) ? rules.standingBpm() : rules.restingBpm();
	}

}
