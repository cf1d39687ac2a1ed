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

	/** The reading of a rank, 1 the highest; needs as many readings. */
	double highest(int rank) {
		return this.sorted[this.size - rank];
	}

	/** As {@link Statistics#median}; needs at least one reading. */
	double median() {
		int middle = this.size / 2;
		return (this.size % 2 == 1) ? this.sorted[middle] : (this.sorted[middle - 1] + this.sorted[middle]) / 2;
	}

	/**
	 * As {@link Statistics#mad}. The readings nearest to the median stand side by side:
	 * of all rows of that many, theirs is the one whose farther end is nearest. Going up,
	 * the lower end comes nearer and the upper one goes away, so the row is found by
	 * halving.
	 * @param median what {@link #median} says
	 */
	double mad(double median) {
		double[] values = this.sorted;
		int rest = this.size / 2;
		int low = 0;
		int high = this.size - rest;
		while (low < high) {
			int middle = (low + high) >>> 1;
			if (median - values[middle] > values[middle + rest] - median) {
				low = middle + 1;
			}
			else {
				high = middle;
			}
		}
		double above = (low + rest < this.size) ? values[low + rest] - median : Double.POSITIVE_INFINITY;
		double below = (low > 0) ? median - values[low - 1] : Double.POSITIVE_INFINITY;
		if (this.size % 2 == 1) {
			return Math.min(above, below);
		}
		return (above <= below) ? (above + Math.max(median - values[low], values[low + rest - 1] - median)) / 2
				: (below + Math.max(median - values[low], values[low + rest - 1] - median)) / 2;
	}

}
