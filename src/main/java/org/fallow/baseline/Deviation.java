package org.fallow.baseline;

import org.fallow.entry.Posture;
import org.fallow.rules.RuleSet;

/**
 * One morning's distance from the baseline, with the limits it is held against, in exact
 * decimals.
 *
 * @param dev resting heart rate minus baseline, bpm
 * @param line L: from here on the morning is raised, bpm
 * @param low below this the morning is low, bpm (negative)
 * @param high from this on the morning is high, bpm
 * @param flag what follows
 */
public record Deviation(double dev, double line, double low, double high, RhrFlag flag) {

	/**
	 * Refuses what no reading gives: with it no flag would be right.
	 * @throws IllegalArgumentException if a number is not finite
	 */
	public Deviation {
		if (!Double.isFinite(dev) || !Double.isFinite(line) || !Double.isFinite(low) || !Double.isFinite(high)) {
			throw new IllegalArgumentException("not a finite number: " + dev + ", " + line + ", " + low + ", " + high);
		}
	}

	/**
	 * The deviation of a reading. Worked example: baseline 50, spread 1, a line of 4.5, a
	 * reading of 58: dev 8, high from 10, so the morning is raised.
	 * @param rhrBpm the reading
	 * @param baseline the athlete's normal in the same series
	 * @param posture how it was taken
	 * @param rules flag numbers
	 * @return the deviation
	 */
	public static Deviation of(double rhrBpm, RhrBaseline baseline, Posture posture, RuleSet.Flags rules) {
		return of(rhrBpm, baseline, RhrFlag.tooFastFrom(posture, rules), rules);
	}

	/**
	 * The same with a figure of the person's own.
	 * @param rhrBpm the reading
	 * @param baseline the athlete's normal in the same series
	 * @param tooFastFrom from here on it is too fast at rest, bpm
	 * @param rules flag numbers
	 * @return the deviation
	 */
	public static Deviation of(double rhrBpm, RhrBaseline baseline, double tooFastFrom, RuleSet.Flags rules) {
		double dev = dev(rhrBpm, baseline.median());
		double line = baseline.line().bpm();
		double low = low(baseline.spread(), rules);
		double high = high(baseline.spread(), rules);
		RhrFlag flag = (rhrBpm >= tooFastFrom) ? RhrFlag.VERY_HIGH : flag(dev, line, low, high, rules);
		return new Deviation(dev, line, low, high, flag);
	}

	static double dev(double rhrBpm, double median) {
		return Exact.decimal(rhrBpm - median);
	}

	/**
	 * The deviation below which a morning is low.
	 * @param spread the baseline's spread, bpm
	 * @param rules flag numbers
	 * @return bpm, negative
	 */
	public static double low(double spread, RuleSet.Flags rules) {
		return -Math.max(rules.lowFloor(), Exact.decimal(rules.lowSpreads() * spread));
	}

	static double high(double spread, RuleSet.Flags rules) {
		return Math.min(rules.highCeiling(), Math.max(rules.highFloor(), Exact.decimal(rules.highSpreads() * spread)));
	}

	static RhrFlag flag(double dev, double line, double low, double high, RuleSet.Flags rules) {
		if (dev >= Math.max(rules.veryHigh(), high)) {
			return RhrFlag.VERY_HIGH;
		}
		if (dev >= high) {
			return RhrFlag.HIGH;
		}
		if (dev >= line) {
			return RhrFlag.RAISED;
		}
		return (dev < low) ? RhrFlag.LOW : RhrFlag.WITHIN;
	}

}
