package org.fallow.training.core;

import java.util.List;

/**
 * Minutes of running that build endurance: those after the first twenty of each run
 * (common practice, no source). Worked examples: one run of 30 minutes gives 10, two of
 * 45 give 50, one of 90 gives 70.
 *
 * @param minutes the sum over the runs
 */
public record EnduranceMinutes(int minutes) {

	private static final int RAMP_MINUTES = 20;

	/**
	 * Refuses what no runs can give.
	 * @throws IllegalArgumentException if negative
	 */
	public EnduranceMinutes {
		if (minutes < 0) {
			throw new IllegalArgumentException("endurance minutes out of range: " + minutes);
		}
	}

	/**
	 * The endurance minutes of some runs; each begins with its own ramp.
	 * @param runMinutes duration of each run, 0 or more; a short one gives nothing
	 * @return their sum
	 * @throws IllegalArgumentException if a duration is negative
	 */
	public static EnduranceMinutes of(List<Integer> runMinutes) {
		int sum = 0;
		for (int run : runMinutes) {
			if (run < 0) {
				throw new IllegalArgumentException("minutes out of range: " + run);
			}
			sum = Math.addExact(sum, Math.max(0, run - RAMP_MINUTES));
		}
		return new EnduranceMinutes(sum);
	}

}
