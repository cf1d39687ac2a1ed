package org.fallow.training.core;

/**
 * The heart rate that a session should stay below. It holds back; staying below it never
 * clears anything.
 *
 * @param bpm beats a minute
 * @param estimated whether it rests on an estimated maximum
 */
public record HeartRateCeiling(double bpm, boolean estimated) {

	private static final double LOWEST_RESTING = 20;

	/**
	 * Checks that there is a rate.
	 * @throws IllegalArgumentException if it is not above 0, or no finite number
	 */
	public HeartRateCeiling {
		if (!(bpm > 0 && Double.isFinite(bpm))) {
			throw new IllegalArgumentException("heart rate out of range: " + bpm);
		}
	}

	/**
	 * A share of the maximum. Worked example: 75 % of 180 bpm is 135 bpm.
	 * @param maximum the athlete's maximum
	 * @param share above 0, up to 1
	 * @return the ceiling
	 * @throws IllegalArgumentException for another share
	 */
	public static HeartRateCeiling ofMaximum(MaximumHeartRate maximum, double share) {
		requireShare(share);
		return new HeartRateCeiling(share * maximum.bpm(), maximum.isEstimate());
	}

	/**
	 * A share of the reserve above rest (Karvonen): resting + share · (maximum -
	 * resting). Worked example: maximum 165, resting 62, 60 % is 123.8 bpm.
	 * @param maximum the athlete's maximum
	 * @param restingBpm resting heart rate, at least 20 bpm and below the maximum
	 * @param share above 0, up to 1
	 * @return the ceiling
	 * @throws IllegalArgumentException for another share or resting heart rate
	 */
	public static HeartRateCeiling ofReserve(MaximumHeartRate maximum, double restingBpm, double share) {
		requireShare(share);
		if (!(restingBpm >= LOWEST_RESTING && restingBpm < maximum.bpm())) {
			throw new IllegalArgumentException("resting heart rate out of range: " + restingBpm);
		}
		return new HeartRateCeiling(restingBpm + share * (maximum.bpm() - restingBpm), maximum.isEstimate());
	}

	private static void requireShare(double share) {
		if (!(share > 0 && share <= 1)) {
			throw new IllegalArgumentException("share out of range: " + share);
		}
	}

}
