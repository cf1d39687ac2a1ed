package org.fallow.baseline;

/**
 * An exponentially weighted moving average, for a line in a chart. No rule uses it: the
 * rules look at windows of stored values.
 */
public final class Smoothing {

	private Smoothing() {
	}

	/**
	 * The next point of the line: weight · value + (1 - weight) · before (NIST/SEMATECH
	 * e-Handbook 6.3.2.4).
	 * @param before the point before; for the first one, the level it starts from
	 * @param value today's value
	 * @param weight of today's value, above 0, up to 1
	 * @return the point after it
	 * @throws IllegalArgumentException for another weight, or if a number is not finite
	 */
	public static double next(double before, double value, double weight) {
		if (!(weight > 0 && weight <= 1)) {
			throw new IllegalArgumentException("weight out of range: " + weight);
		}
		if (!Double.isFinite(before) || !Double.isFinite(value)) {
			throw new IllegalArgumentException("not a finite number: " + before + ", " + value);
		}
		return weight * value + (1 - weight) * before;
	}

}
