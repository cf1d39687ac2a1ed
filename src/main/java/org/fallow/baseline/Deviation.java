package org.fallow.baseline;

import org.fallow.rules.RuleSet;

/**
 * One morning's distance from the baseline, with the limits it is held against.
 *
 * @param dev resting heart rate minus baseline, bpm
 * @param tolerance T: up to here the morning is within band, bpm
 * @param low below this the morning is low, bpm (negative)
 * @param high from this on the morning is high, bpm
 * @param flag what follows
 */
public record Deviation(double dev, double tolerance, double low, double high, RhrFlag flag) {

	/**
	 * Refuses what no reading gives: with it no flag would be right.
	 * @throws IllegalArgumentException if a number is not finite
	 */
	public Deviation {
		if (!Double.isFinite(dev) || !Double.isFinite(tolerance) || !Double.isFinite(low) || !Double.isFinite(high)) {
			throw new IllegalArgumentException(
					"not a finite number: " + dev + ", " + tolerance + ", " + low + ", " + high);
		}
	}

	/**
	 * The deviation of a reading. Worked example: baseline 50, spread 1, a 30 s count of
	 * 58: dev 8, T = 3 + 2/2 = 4, high from 10, so the morning is raised.
	 * @param rhrBpm the reading
	 * @param baseline the athlete's normal in the same series
	 * @param stepBpm step of a counted pulse, 0 for other methods
	 * @param rules flag numbers
	 * @return the deviation
	 */
	public static Deviation of(double rhrBpm, RhrBaseline baseline, double stepBpm, RuleSet.Flags rules) {
		double dev = rhrBpm - baseline.median();
		double tolerance = tolerance(baseline.spread(), stepBpm, rules);
		double low = low(baseline.spread(), rules);
		double high = high(baseline.spread(), rules);
		return new Deviation(dev, tolerance, low, high, flag(dev, tolerance, low, high, rules));
	}

	static double tolerance(double spread, double stepBpm, RuleSet.Flags rules) {
		return Math.min(rules.bandCeiling(), Math.max(rules.bandFloor(), rules.bandSpreads() * spread) + stepBpm / 2);
	}

	static double low(double spread, RuleSet.Flags rules) {
		return -Math.max(rules.lowFloor(), rules.lowSpreads() * spread);
	}

	static double high(double spread, RuleSet.Flags rules) {
		return Math.min(rules.highCeiling(), Math.max(rules.highFloor(), rules.highSpreads() * spread));
	}

	static RhrFlag flag(double dev, double tolerance, double low, double high, RuleSet.Flags rules) {
		if (dev >= Math.max(rules.veryHigh(), high)) {
			return RhrFlag.VERY_HIGH;
		}
		if (dev >= high) {
			return RhrFlag.HIGH;
		}
		if (dev > tolerance) {
			return RhrFlag.RAISED;
		}
		return (dev < low) ? RhrFlag.LOW : RhrFlag.WITHIN;
	}

	/**
	 * Whether the morning is above the band.
	 * @return true for raised, high and very high
	 */
	public boolean isAboveBand() {
		return this.dev > this.tolerance;
	}

}
