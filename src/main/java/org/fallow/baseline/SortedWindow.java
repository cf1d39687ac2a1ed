package org.fallow.baseline;

import java.util.Arrays;

/**
 * Some readings in the order of their size, from which the median and the median absolute
 * deviation are read off. Readings go in and out one by one; what is read off depends on
 * the readings alone, to the last bit, never on those that were in before: nothing is
 * summed.
 */
final class SortedWindow {

	private double[] sorted = new double[32];

	private int size;

	int size() {
		return this.size;
	}

	void clear() {
		this.size = 0;
	}

	void add(double value) {
		if (this.size == this.sorted.length) {
			this.sorted = Arrays.copyOf(this.sorted, 2 * this.size);
		}
		int at = this.size++;
		while (at > 0 && this.sorted[at - 1] > value) {
			this.sorted[at] = this.sorted[at - 1];
			at--;
		}
		this.sorted[at] = value;
	}

	void remove(double value) {
		int at = placeOf(value);
		System.arraycopy(this.sorted, at + 1, this.sorted, at, this.size - at - 1);
		this.size--;
	}

	/** One out, another in: only what lies between the two moves. */
	void replace(double out, double in) {
		double[] values = this.sorted;
		int at = placeOf(out);
		while (at > 0 && values[at - 1] > in) {
			values[at] = values[at - 1];
			at--;
		}
		while (at < this.size - 1 && values[at + 1] < in) {
			values[at] = values[at + 1];
			at++;
		}
		values[at] = in;
	}

	private int placeOf(double value) {
		int at = 0;
		while (this.sorted[at] != value) {
			at++;
		}
		return at;
	}

	/** As {@link Statistics#median}; needs at least one reading. */
	double median() {
		int middle = this.size / 2;
		return (this.size % 2 == 1) ? this.sorted[middle] : (this.sorted[middle - 1] + this.sorted[middle]) / 2;
	}

	/**
	 * As {@link Statistics#mad}: the distances rise from the middle outwards on both
	 * sides, so the middle one is found by going along the nearer side each time.
	 * @param median what {@link #median} says
	 */
	double mad(double median) {
		double[] values = this.sorted;
		int right = (this.size + 1) / 2;
		int left = right - 1;
		double before = 0;
		double distance = 0;
		for (int i = this.size / 2; i >= 0; i--) {
			before = distance;
			double below = (left < 0) ? Double.POSITIVE_INFINITY : median - values[left];
			double above = (right == this.size) ? Double.POSITIVE_INFINITY : values[right] - median;
			if (below <= above) {
				distance = below;
				left--;
			}
			else {
				distance = above;
				right++;
			}
		}
		return (this.size % 2 == 1) ? distance : (before + distance) / 2;
	}

}
