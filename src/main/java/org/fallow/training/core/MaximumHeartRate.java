package org.fallow.training.core;

/**
 * An athlete's greatest heart rate, measured or estimated from age.
 *
 * @param bpm beats a minute, 100 to 240
 * @param plusMinusBpm how far off it may be: 0 for a measured one, else the estimate's
 * standard deviation, bpm
 */
public record MaximumHeartRate(double bpm, double plusMinusBpm) {

	private static final double LOWEST = 100;

	private static final double HIGHEST = 240;

	private static final int YOUNGEST = 18;

	/** Oldest age with an estimate, completed years. */
	public static final int OLDEST = 100;

	private static final double ESTIMATE_PLUS_MINUS = 10;

	/**
	 * Checks the ranges.
	 * @throws IllegalArgumentException if the rate is no plausible one, or the
	 * uncertainty is negative or no finite number
	 */
	public MaximumHeartRate {
		if (!(bpm >= LOWEST && bpm <= HIGHEST)) {
			throw new IllegalArgumentException("maximum heart rate out of range: " + bpm);
		}
		if (!(plusMinusBpm >= 0 && Double.isFinite(plusMinusBpm))) {
			throw new IllegalArgumentException("uncertainty out of range: " + plusMinusBpm);
		}
	}

	/**
	 * A rate reached in a test or a race.
	 * @param bpm beats a minute
	 * @return the maximum, without uncertainty
	 */
	public static MaximumHeartRate measured(double bpm) {
		return new MaximumHeartRate(bpm, 0);
	}

	/**
	 * The estimate 208 - 0.7 times age (Tanaka 2001, from memory), which is off by 10 bpm
	 * and more for one adult in three: a page says that it is an estimate. Worked
	 * example: 40 years give 180 ± 10 bpm.
	 * @param ageYears completed years, 18 to 100; the formula was made from adults
	 * @return the estimate
	 * @throws IllegalArgumentException for another age
	 */
	public static MaximumHeartRate estimated(int ageYears) {
		if (ageYears < YOUNGEST || ageYears > OLDEST) {
			throw new IllegalArgumentException("no estimate for an age of " + ageYears);
		}
		return new MaximumHeartRate(208 - 0.7 * ageYears, ESTIMATE_PLUS_MINUS);
	}

	/**
	 * Whether it is only estimated.
	 * @return true if so
	 */
	public boolean isEstimate() {
		return this.plusMinusBpm > 0;
	}

}
