package org.fallow.baseline;

import java.util.Arrays;

import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * The eligible readings of one series in the order of their days, and the baselines of
 * any day over them. Asked day by day it looks at what came in and went out of the window
 * only; the answers are those of the whole window, whatever was asked before.
 * <p>
 * Days are days since 1970-01-01. A column is for one thread.
 */
public final class Column {

	/** So many readings are looked at one by one before the search begins. */
	private static final int NEAR = 4;

	private final RuleSet.Baseline rules;

	private final RuleSet all;

	private final Rolling latest = new Rolling();

	/** For baselines of days that lie back: they roll on at a distance. */
	private final Rolling past = new Rolling();

	private Rolling window = this.latest;

	private int[] days = new int[64];

	private double[] values = new double[64];

	private int size;

	private int near;

	private @Nullable RhrBaseline[] known = new RhrBaseline[64];

	private boolean[] asked = new boolean[64];

	private int firstKnown;

	private int knownDays;

	private int[] passedOver = {};

	private int passed;

	/**
	 * An empty column.
	 * @param rules all numbers
	 */
	public Column(RuleSet rules) {
		this.all = rules;
		this.rules = rules.baseline();
	}

	/**
	 * Adds the next reading.
	 * @param day its day, after all that are there
	 * @param value bpm, or ln RMSSD with RMSSD in ms
	 * @throws IllegalArgumentException if the day is not after the others, or the value
	 * not finite
	 */
	public void add(int day, double value) {
		if ((this.size > 0 && this.days[this.size - 1] >= day) || !Double.isFinite(value)) {
			throw new IllegalArgumentException("no next reading: " + day + ", " + value);
		}
		if (this.size == this.days.length) {
			this.days = Arrays.copyOf(this.days, 2 * this.size);
			this.values = Arrays.copyOf(this.values, 2 * this.size);
		}
		this.days[this.size] = day;
		this.values[this.size++] = value;
		forgetAfter(day);
	}

	/**
	 * Notes a day whose reading is not eligible: it enters nothing, but it is the reading
	 * before for the days after it.
	 * @param day its day, after all that are there
	 */
	public void passOver(int day) {
		if (this.passed == this.passedOver.length) {
			this.passedOver = Arrays.copyOf(this.passedOver, Math.max(16, 2 * this.passed));
		}
		this.passedOver[this.passed++] = day;
		forgetAfter(day);
	}

	/**
	 * How many readings some days have.
	 * @param first first day, inclusive
	 * @param end last day, exclusive
	 * @return their number
	 */
	public int count(int first, int end) {
		return (first < end) ? indexOf(end, this.size) - indexOf(first, this.size) : 0;
	}

	/**
	 * How many readings the baseline of a day rests on.
	 * @param day the day; its own reading is not among them
	 * @return their number
	 */
	public int readings(int day) {
		int end = indexOf(day, this.size);
		return end - begin(day, end);
	}

	/**
	 * The resting heart rate baseline of a day, from the readings before it.
	 * @param day the day
	 * @return the baseline; null if there are too few readings for one
	 */
	public @Nullable RhrBaseline rhrBaseline(int day) {
		int at = (this.knownDays == 0) ? -1 : day - this.firstKnown;
		if (at >= 0 && at < this.knownDays && this.asked[at]) {
			return this.known[at];
		}
		RhrBaseline baseline = moveTo(day)
				? new RhrBaseline(this.window.sorted.size(), median(), spread(), line(day, median())) : null;
		keep(day, baseline);
		return baseline;
	}

	private Line line(int day, double median) {
		int end = indexOf(day, this.size);
		int begin = indexOf(day - this.all.line().days(), end);
		return Line.of(Arrays.copyOfRange(this.values, begin, end), readingBefore(begin, end, day) - begin, median,
				this.all.line());
	}

	/**
	 * L of a day, as {@link Line#bpm()} of its baseline.
	 * @param day the day {@link #moveTo} was asked for
	 * @param median its median, bpm
	 * @return bpm
	 */
	double lineBpm(int day, double median) {
		RuleSet.Line line = this.all.line();
		int end = indexOf(day, this.size);
		int begin = indexOf(day - line.days(), end);
		int n = end - begin;
		int rank = Line.rank(n, line);
		if (begin == this.window.from && n >= line.secondFrom()) {
			return Line.bpm(n, this.window.sorted.highest(rank), median, line);
		}
		int before = (n < line.secondFrom()) ? readingBefore(begin, end, day) : begin - 1;
		return Line.bpm(n, highest(begin, end, before, rank), median, line);
	}

	/** The reading of a rank without one, 1 the highest; not a number if too few. */
	private double highest(int begin, int end, int without, int rank) {
		double first = Double.NEGATIVE_INFINITY;
		double second = first;
		double third = first;
		for (int i = begin; i < end; i++) {
			double value = (i == without) ? Double.NEGATIVE_INFINITY : this.values[i];
			if (value > first) {
				third = second;
				second = first;
				first = value;
			}
			else if (value > second) {
				third = second;
				second = value;
			}
			else if (value > third) {
				third = value;
			}
		}
		double found = (rank == 1) ? first : (rank == 2) ? second : third;
		return Double.isInfinite(found) ? Double.NaN : found;
	}

	/**
	 * The reading before a day's: the latest of a day that had a baseline, eligible or
	 * not; one before the first index if it is not among those from there on.
	 */
	private int readingBefore(int begin, int end, int day) {
		int passedAt = this.passed - 1;
		while (passedAt >= 0 && this.passedOver[passedAt] >= day) {
			passedAt--;
		}
		for (int i = end - 1; i >= begin; i--) {
			while (passedAt >= 0 && this.passedOver[passedAt] > this.days[i]) {
				if (hasBaseline(this.passedOver[passedAt--])) {
					return begin - 1;
				}
			}
			if (hasBaseline(this.days[i])) {
				return i;
			}
		}
		return begin - 1;
	}

	private boolean hasBaseline(int day) {
		return readings(day) >= this.rules.provisionalFrom();
	}

	/**
	 * The heart-rate variability baseline of a day, from the readings before it.
	 * @param day the day
	 * @return the baseline; null if there are too few readings for one
	 */
	public @Nullable HrvBaseline hrvBaseline(int day) {
		int end = indexOf(day, this.size);
		int begin = begin(day, end);
		if (end - begin < this.rules.provisionalFrom()) {
			return null;
		}
		double mean = Statistics.mean(this.values, begin, end);
		double sd = Statistics.sd(this.values, begin, end, mean);
		return new HrvBaseline(end - begin, mean, Math.max(this.rules.leastLnSd(), sd));
	}

	/**
	 * Where the mean of the last mornings up to a day lies against the day's baseline.
	 * @param day the day
	 * @param hrv which mornings, and how far below is suppressed
	 * @return the flag's ordinal, or {@link DailyFlags#NONE}
	 */
	byte hrvFlag(int day, RuleSet.Hrv hrv) {
		int end = indexOf(day, this.size);
		int begin = begin(day, end);
		int last = indexOf(day + 1, this.size);
		int first = last;
		while (first > 0 && this.days[first - 1] > day - hrv.days()) {
			first--;
		}
		if (end - begin < this.rules.provisionalFrom() || last - first < hrv.leastReadings()) {
			return DailyFlags.NONE;
		}
		double mean = Statistics.mean(this.values, begin, end);
		double sd = Math.max(this.rules.leastLnSd(), Statistics.sd(this.values, begin, end, mean));
		boolean low = HrvFlag.isSuppressed(Statistics.mean(this.values, first, last), mean, sd, hrv);
		return (byte) (low ? HrvFlag.SUPPRESSED : HrvFlag.NORMAL).ordinal();
	}

	/**
	 * Moves the window to the readings a day's baseline rests on.
	 * @param day the day
	 * @return whether they are enough for one
	 */
	boolean moveTo(int day) {
		int end = indexOf(day, this.size);
		int begin = begin(day, end);
		this.window = (end < this.latest.to) ? this.past : this.latest;
		this.window.moveTo(begin, end, this.values);
		return end - begin >= this.rules.provisionalFrom();
	}

	/** The median of the window, bpm. */
	double median() {
		return Exact.decimal(this.window.sorted.median());
	}

	/** The spread of the window, bpm. */
	double spread() {
		return RhrBaseline.spread(this.window.sorted.mad(this.window.sorted.median()), this.rules);
	}

	/** The first reading of the window of a day, which ends before a reading. */
	private int begin(int day, int end) {
		int begin = indexOf(day - this.rules.windowDays(), end);
		this.near = begin;
		if (end - begin >= this.rules.fewReadings()) {
			return begin;
		}
		return Math.max(indexOf(day - this.rules.fallbackDays(), end), end - this.rules.fallbackReadings());
	}

	/** The first reading on or after a day, up to an index. */
	private int indexOf(int day, int end) {
		if (end == 0 || this.days[end - 1] < day) {
			return end;
		}
		if (end == 1 || this.days[end - 2] < day) {
			return end - 1;
		}
		int index = this.near;
		if (index <= end && (index == 0 || this.days[index - 1] < day)) {
			int last = Math.min(end, index + NEAR);
			while (index < last && this.days[index] < day) {
				index++;
			}
			if (index < last) {
				return index;
			}
		}
		int found = Arrays.binarySearch(this.days, 0, end, day);
		return (found < 0) ? -found - 1 : found;
	}

	private void keep(int day, @Nullable RhrBaseline baseline) {
		if (this.knownDays == 0 || day < this.firstKnown) {
			this.firstKnown = day;
			this.knownDays = 0;
		}
		int at = day - this.firstKnown;
		if (at >= this.known.length) {
			this.known = Arrays.copyOf(this.known, Math.max(at + 1, 2 * this.known.length));
			this.asked = Arrays.copyOf(this.asked, this.known.length);
		}
		for (int i = this.knownDays; i < at; i++) {
			this.asked[i] = false;
		}
		this.known[at] = baseline;
		this.asked[at] = true;
		this.knownDays = Math.max(this.knownDays, at + 1);
	}

	/** A reading changes the baselines of the days after its own. */
	private void forgetAfter(int day) {
		this.knownDays = Math.max(0, Math.min(this.knownDays, day + 1 - this.firstKnown));
	}

	/** The readings from an index to an index, exclusive, in order of size. */
	private static final class Rolling {

		private final SortedWindow sorted = new SortedWindow();

		private int from;

		private int to;

		void moveTo(int begin, int end, double[] values) {
			if (begin < this.from || end < this.to || begin >= this.to) {
				this.sorted.clear();
				this.from = begin;
				this.to = begin;
			}
			while (this.from < begin && this.to < end) {
				this.sorted.replace(values[this.from++], values[this.to++]);
			}
			while (this.from < begin) {
				this.sorted.remove(values[this.from++]);
			}
			while (this.to < end) {
				this.sorted.add(values[this.to++]);
			}
		}

	}

}
