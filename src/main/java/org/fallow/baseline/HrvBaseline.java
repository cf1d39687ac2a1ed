package org.fallow.baseline;

import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * An athlete's normal heart-rate variability in one series, as ln RMSSD.
 *
 * @param n eligible readings it rests on
 * @param mean mean of ln RMSSD, RMSSD in ms
 * @param sd standard deviation (n - 1) of ln RMSSD, not below the rules' least one
 */
public record HrvBaseline(int n, double mean, double sd) {

	/**
	 * Refuses what no readings give.
	 * @throws IllegalArgumentException if the mean is not finite, or n or the standard
	 * deviation is not above 0
	 */
	public HrvBaseline {
		if (n < 1 || !Double.isFinite(mean) || !(sd > 0 && Double.isFinite(sd))) {
			throw new IllegalArgumentException("no baseline: " + n + ", " + mean + ", " + sd);
		}
	}

	/**
	 * The baseline of the readings, gathered by the caller: what {@link Column} gives day
	 * by day.
	 * @param lnValues ln RMSSD of eligible readings
	 * @param rules baseline numbers
	 * @return the baseline, or null if there are too few readings for one
	 */
	public static @Nullable HrvBaseline of(double[] lnValues, RuleSet.Baseline rules) {
		if (lnValues.length < rules.provisionalFrom()) {
			return null;
		}
		return new HrvBaseline(lnValues.length, Statistics.mean(lnValues),
				Math.max(rules.leastLnSd(), Statistics.sd(lnValues)));
	}

}
