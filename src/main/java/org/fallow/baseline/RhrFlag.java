package org.fallow.baseline;

/**
 * Where a morning's resting heart rate lies against the athlete's baseline, lowest first.
 */
public enum RhrFlag {

	/** Unusually low; never counts as recovered. */
	LOW,
	/** Within the normal band. */
	WITHIN,
	/** Above the band, below high. */
	RAISED,
	/** In the range of illness and stress. */
	HIGH,
	/** Nowhere near training. */
	VERY_HIGH;

	/**
	 * Whether the flag alone asks for rest.
	 * @return true for high and very high
	 */
	public boolean isHigh() {
		return compareTo(HIGH) >= 0;
	}

}
