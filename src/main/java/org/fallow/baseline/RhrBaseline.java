package org.fallow.baseline;

import java.util.Objects;

import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * An athlete's normal resting heart rate in one series.
 *
 * @param n eligible readings it rests on
 * @param median bpm
 * @param spread 1.4826 times the MAD, at least 1 bpm
 * @param line the line above it
 */
public record RhrBaseline(int n, double median, double spread, Line line) {

	/**
	 * Refuses what no readings give.
	 * @throws IllegalArgumentException if a number is not finite and above 0
	 */
	public RhrBaseline {
		if (n < 1 || !(median > 0 && Double.isFinite(median)) || !(spread > 0 && Double.isFinite(spread))) {
			throw new IllegalArgumentException("no baseline: " + n + ", " + median + ", " + spread);
		}
		Objects.requireNonNull(line);
	}

	/**
	 * The baseline of the readings, gathered by the caller: what {@link Column} gives day
	 * by day.
	 * @param readings eligible readings, bpm
	 * @param recent those of the line's days in the order of their days, bpm
	 * @param before which of these is the reading before today's; -1 if none is
	 * @param rules all numbers
	 * @return the baseline, or null if there are too few readings for one
	 */
	public static @Nullable RhrBaseline of(double[] readings, double[] recent, int before, RuleSet rules) {
		if (readings.length < rules.baseline().provisionalFrom()) {
			return null;
		}
		double median = Exact.decimal(Statistics.median(readings));
		return new RhrBaseline(readings.length, median, spread(Statistics.mad(readings), rules.baseline()),
				Line.of(recent, before, median, rules.line()));
	}

	/** The spread of a MAD. */
	static double spread(double mad, RuleSet.Baseline rules) {
		return Math.max(rules.leastSpreadBpm(), Exact.decimal(rules.madScale() * mad));
	}

	/**
	 * Whether the baseline rests on few readings.
	 * @param rules baseline numbers
	 * @return true if it is provisional, false if it is established
	 */
	public boolean isProvisional(RuleSet.Baseline rules) {
		return this.n < rules.establishedFrom();
	}

}
