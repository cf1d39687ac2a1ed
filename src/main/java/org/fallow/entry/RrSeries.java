package org.fallow.entry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * RR intervals of one measurement, in order, and what is computed from them. Beats are
 * never repaired: a suspect one is left out, and no difference is taken across it.
 * Definitions: Task Force 1996 (Eur Heart J 17:354); 20 % rule: Malik 1989, from memory.
 */
public final class RrSeries {

	private static final double SHORTEST_MS = 300;

	private static final double LONGEST_MS = 2000;

	private static final double CHANGE = 0.20;

	private static final double SUSPECT_SHARE = 0.05;

	private static final double LEAST_SIGNAL_MS = 60_000;

	private static final int MOST_BEATS = 20_000;

	private final double[] intervals;

	private final boolean[] suspect;

	private RrSeries(double[] intervals) {
		this.intervals = intervals;
		this.suspect = new boolean[intervals.length];
		for (int i = 0; i < intervals.length; i++) {
			this.suspect[i] = isSuspect(i);
		}
	}

	/**
	 * A series of intervals.
	 * @param milliseconds RR intervals, at least two, each above 0
	 * @return the series
	 * @throws IllegalArgumentException if there are too few, or one is not a positive
	 * finite number
	 */
	public static RrSeries of(double... milliseconds) {
		if (milliseconds.length < 2) {
			throw new IllegalArgumentException("needs at least 2 RR intervals, has " + milliseconds.length);
		}
		for (int i = 0; i < milliseconds.length; i++) {
			if (!(milliseconds[i] > 0) || !Double.isFinite(milliseconds[i])) {
				throw new IllegalArgumentException("RR interval " + (i + 1) + " is not above 0: " + milliseconds[i]);
			}
		}
		return new RrSeries(milliseconds.clone());
	}

	/**
	 * Reads intervals separated by line ends, white space, commas or semicolons.
	 * @param text the text, milliseconds with a decimal point where there is one
	 * @return the series
	 * @throws IllegalArgumentException naming the interval, if one is no positive number
	 * or there are fewer than 2 or more than 20,000
	 */
	public static RrSeries parse(String text) {
		String[] parts = text.strip().split("[\\s,;]+");
		if (parts.length > MOST_BEATS) {
			throw new IllegalArgumentException("more than " + MOST_BEATS + " RR intervals");
		}
		double[] values = new double[parts.length];
		for (int i = 0; i < parts.length; i++) {
			if (!parts[i].matches("\\d{1,5}(\\.\\d{1,6})?")) {
				throw new IllegalArgumentException("RR interval " + (i + 1) + " is not a number above 0");
			}
			values[i] = Double.parseDouble(parts[i]);
		}
		return of(values);
	}

	/**
	 * The intervals to be kept.
	 * @return all of them in order, in whole milliseconds
	 */
	public List<Integer> milliseconds() {
		return Arrays.stream(this.intervals).mapToObj((interval) -> (int) Math.round(interval)).toList();
	}

	private boolean isSuspect(int i) {
		double value = this.intervals[i];
		if (value < SHORTEST_MS || value > LONGEST_MS) {
			return true;
		}
		return i > 0 && Math.abs(value - this.intervals[i - 1]) > CHANGE * this.intervals[i - 1];
	}

	/**
	 * The suspect beats: outside 300 to 2000 ms, or more than 20 % from the one before.
	 * @return their indices from 0, ascending
	 */
	public List<Integer> suspects() {
		List<Integer> found = new ArrayList<>();
		for (int i = 0; i < this.suspect.length; i++) {
			if (this.suspect[i]) {
				found.add(i);
			}
		}
		return found;
	}

	/**
	 * Whether the measurement should be repeated: over 5 % of the beats are suspect, or
	 * it holds less than 60 s of signal.
	 * @return true if so
	 */
	public boolean isLowQuality() {
		return suspects().size() > SUSPECT_SHARE * this.intervals.length
				|| Arrays.stream(this.intervals).sum() < LEAST_SIGNAL_MS;
	}

	/**
	 * The same series without its suspect beats taken into account.
	 * @return figures of the clean beats
	 */
	public Figures clean() {
		return figures(this.suspect);
	}

	/**
	 * All beats, suspect or not, for comparison with published figures.
	 * @return figures of all beats
	 */
	public Figures raw() {
		return figures(new boolean[this.intervals.length]);
	}

	private Figures figures(boolean[] left) {
		List<Double> beats = new ArrayList<>();
		List<Double> differences = new ArrayList<>();
		for (int i = 0; i < this.intervals.length; i++) {
			if (!left[i]) {
				beats.add(this.intervals[i]);
				if (i > 0 && !left[i - 1]) {
					differences.add(this.intervals[i] - this.intervals[i - 1]);
				}
			}
		}
		return Figures.of(beats, differences);
	}

	/**
	 * What a series amounts to.
	 *
	 * @param beats beats taken into account
	 * @param meanRrMs mean RR interval, ms
	 * @param sdnnMs standard deviation (n - 1) of the intervals, ms; absent below 2 beats
	 * @param rmssdMs root of the mean of squared successive differences, ms; absent
	 * without a difference
	 * @param nn50 differences of more than 50 ms
	 * @param pnn50 their share of all differences, percent
	 */
	public record Figures(int beats, @Nullable Double meanRrMs, @Nullable Double sdnnMs, @Nullable Double rmssdMs,
			int nn50, double pnn50) {

		private static final double WIDE_MS = 50;

		static Figures of(List<Double> beats, List<Double> differences) {
			if (beats.isEmpty()) {
				return new Figures(0, null, null, null, 0, 0);
			}
			double mean = beats.stream().mapToDouble(Double::doubleValue).sum() / beats.size();
			double squares = beats.stream().mapToDouble((beat) -> (beat - mean) * (beat - mean)).sum();
			Double sdnn = (beats.size() < 2) ? null : Double.valueOf(Math.sqrt(squares / (beats.size() - 1)));
			double steps = differences.stream().mapToDouble((d) -> d * d).sum();
			Double rmssd = differences.isEmpty() ? null : Double.valueOf(Math.sqrt(steps / differences.size()));
			int wide = (int) differences.stream().filter((d) -> Math.abs(d) > WIDE_MS).count();
			double share = differences.isEmpty() ? 0 : 100.0 * wide / differences.size();
			return new Figures(beats.size(), mean, sdnn, rmssd, wide, share);
		}

		/**
		 * Mean heart rate.
		 * @return bpm, 60,000 over the mean interval; absent without a beat
		 */
		public @Nullable Double heartRateBpm() {
			return (this.meanRrMs == null) ? null : Double.valueOf(60_000 / this.meanRrMs);
		}

	}

}
