package org.fallow.baseline;

import java.util.Arrays;

/**
 * The few statistics the decisions need, each over a whole window: no running sums, so
 * the same values give the same bytes whatever came before.
 */
public final class Statistics {

	private Statistics() {
	}

	/**
	 * Arithmetic mean, corrected by a second pass.
	 * @param values at least one
	 * @return the mean
	 */
	public static double mean(double[] values) {
		requireSome(values, 1);
		return mean(values, 0, values.length);
	}

	/**
	 * The same of finite values from an index to an index, exclusive. Sums run in four
	 * lanes, for a processor adds four numbers while it waits for one; which value is in
	 * which lane depends on its place in the range alone.
	 */
	static double mean(double[] values, int from, int to) {
		double first = sumOfDistances(values, from, to, 0) / (to - from);
		return first + sumOfDistances(values, from, to, first) / (to - from);
	}

	private static double sumOfDistances(double[] values, int from, int to, double point) {
		double one = 0;
		double two = 0;
		double three = 0;
		double four = 0;
		int i = from;
		for (; i < to - 3; i += 4) {
			one += values[i] - point;
			two += values[i + 1] - point;
			three += values[i + 2] - point;
			four += values[i + 3] - point;
		}
		for (; i < to; i++) {
			one += values[i] - point;
		}
		return (one + two) + (three + four);
	}

	/**
	 * Standard deviation with divisor n - 1, in two passes.
	 * @param values at least two
	 * @return the standard deviation
	 */
	public static double sd(double[] values) {
		requireSome(values, 2);
		return sd(values, 0, values.length, mean(values, 0, values.length));
	}

	/** The same of finite values from an index to an index, exclusive. */
	static double sd(double[] values, int from, int to, double mean) {
		double squares = 0;
		double otherSquares = 0;
		double rest = 0;
		double otherRest = 0;
		int i = from;
		for (; i < to - 1; i += 2) {
			double distance = values[i] - mean;
			double other = values[i + 1] - mean;
			squares += distance * distance;
			otherSquares += other * other;
			rest += distance;
			otherRest += other;
		}
		if (i < to) {
			squares += (values[i] - mean) * (values[i] - mean);
			rest += values[i] - mean;
		}
		int n = to - from;
		rest += otherRest;
		return Math.sqrt(Math.max(0, squares + otherSquares - rest * rest / n) / (n - 1));
	}

	/**
	 * Median; of an even number, the mean of the middle two.
	 * @param values at least one
	 * @return the median
	 */
	public static double median(double[] values) {
		requireSome(values, 1);
		double[] sorted = values.clone();
		Arrays.sort(sorted);
		int middle = sorted.length / 2;
		return (sorted.length % 2 == 1) ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
	}

	/**
	 * Median absolute deviation from the median, unscaled.
	 * @param values at least one
	 * @return the MAD
	 */
	public static double mad(double[] values) {
		double median = median(values);
		double[] distances = new double[values.length];
		for (int i = 0; i < values.length; i++) {
			distances[i] = Math.abs(values[i] - median);
		}
		return median(distances);
	}

	private static void requireSome(double[] values, int least) {
		if (values.length < least) {
			throw new IllegalArgumentException("needs at least " + least + " values, has " + values.length);
		}
		for (double value : values) {
			if (!Double.isFinite(value)) {
				throw new IllegalArgumentException("not a finite number: " + value);
			}
		}
	}

}
