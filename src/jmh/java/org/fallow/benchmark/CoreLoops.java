package org.fallow.benchmark;

import java.time.LocalDate;
import java.util.concurrent.TimeUnit;

import org.fallow.baseline.DailyFlags;
import org.fallow.baseline.RhrFlag;
import org.fallow.entry.Posture;
import org.fallow.illness.core.Course;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One operation of each loop is all days of the same athlete-years, so that the loops can
 * be compared; {@link CoreBenchmarks} turns them into athlete-days a second.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(2)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class CoreLoops {

	static final int ATHLETES = 40;

	static final int DAYS = 365;

	private static final RuleSet RULES = DefaultRules.ruleSet();

	private static final RuleBook BOOK = RuleBook.of(RULES);

	private static final LocalDate LAST = AthleteYears.FIRST.plusDays(DAYS - 1L);

	private final AthleteYears healthy = AthleteYears.of(ATHLETES, DAYS, 0);

	private final AthleteYears ill = AthleteYears.of(ATHLETES, DAYS, 2);

	private final DailyFlags kernel = new DailyFlags(RULES, Posture.LYING);

	private final double[] dev = new double[DAYS];

	private final byte[] rhr = new byte[DAYS];

	private final byte[] hrv = new byte[DAYS];

	private final boolean[] above = new boolean[DAYS];

	/**
	 * Baselines and flags without evidence.
	 * @return a sum of the flags, so that none is left out
	 */
	@Benchmark
	public int kernel() {
		int sum = 0;
		for (AthleteYears.Athlete athlete : this.healthy.athletes()) {
			int n = athlete.day().length;
			this.kernel.rhr(athlete.day(), athlete.rhr(), this.dev, this.rhr, this.above);
			this.kernel.hrv(athlete.day(), athlete.ln(), this.hrv);
			sum += this.rhr[n - 1] + this.hrv[n - 1];
		}
		return sum;
	}

	/**
	 * The same window statistics by a general library, each day by itself.
	 * @return a sum of the flags
	 */
	@Benchmark
	public int library() {
		int sum = 0;
		for (AthleteYears.Athlete athlete : this.healthy.athletes()) {
			sum += LibraryFlags.of(athlete, RULES);
		}
		return sum;
	}

	/**
	 * The whole assessment of healthy athletes, with evidence.
	 * @return how many days
	 */
	@Benchmark
	public int healthyFold() {
		int days = 0;
		for (AthleteYears.Athlete athlete : this.healthy.athletes()) {
			days += Course.of(athlete.timeline(), BOOK, LAST).size();
		}
		return days;
	}

	/**
	 * The whole assessment with two illnesses a year and their returns.
	 * @return how many days
	 */
	@Benchmark
	public int foldWithReturns() {
		int days = 0;
		for (AthleteYears.Athlete athlete : this.ill.athletes()) {
			days += Course.of(athlete.timeline(), BOOK, LAST).size();
		}
		return days;
	}

	/**
	 * The same without earliest days of gates.
	 * @return how many days
	 */
	@Benchmark
	public int foldWithoutForecast() {
		int days = 0;
		for (AthleteYears.Athlete athlete : this.ill.athletes()) {
			days += Course.withoutForecast(athlete.timeline(), BOOK, LAST).size();
		}
		return days;
	}

	/** What one would write with a statistics library, window by window. */
	static final class LibraryFlags {

		private LibraryFlags() {
		}

		static int of(AthleteYears.Athlete athlete, RuleSet rules) {
			int sum = 0;
			for (int i = 0; i < athlete.day().length; i++) {
				int from = i;
				while (from > 0 && athlete.day()[from - 1] >= athlete.day()[i] - rules.baseline().windowDays()) {
					from--;
				}
				sum += rhr(athlete, from, i, rules) + hrv(athlete, from, i, rules);
			}
			return sum;
		}

		private static int rhr(AthleteYears.Athlete athlete, int from, int i, RuleSet rules) {
			if (i - from < rules.baseline().provisionalFrom()) {
				return DailyFlags.NONE;
			}
			DescriptiveStatistics window = new DescriptiveStatistics();
			for (int k = from; k < i; k++) {
				window.addValue(athlete.rhr()[k]);
			}
			double median = window.getPercentile(50);
			DescriptiveStatistics distances = new DescriptiveStatistics();
			for (int k = from; k < i; k++) {
				distances.addValue(Math.abs(athlete.rhr()[k] - median));
			}
			double spread = Math.max(1, rules.baseline().madScale() * distances.getPercentile(50));
			double dev = athlete.rhr()[i] - median;
			double[] sorted = window.getSortedValues();
			double line = Math.min(8, Math.max(4, sorted[Math.max(0, sorted.length - 3)] - median + 1.5));
			if (dev < -Math.max(5, 2 * spread)) {
				return RhrFlag.LOW.ordinal();
			}
			return (dev >= line ? RhrFlag.RAISED : RhrFlag.WITHIN).ordinal();
		}

		private static int hrv(AthleteYears.Athlete athlete, int from, int i, RuleSet rules) {
			if (i - from < rules.baseline().provisionalFrom()) {
				return DailyFlags.NONE;
			}
			DescriptiveStatistics window = new DescriptiveStatistics();
			for (int k = from; k < i; k++) {
				window.addValue(athlete.ln()[k]);
			}
			DescriptiveStatistics recent = new DescriptiveStatistics();
			for (int k = Math.max(0, i - 6); k <= i; k++) {
				recent.addValue(athlete.ln()[k]);
			}
			return (recent.getMean() < window.getMean() - window.getStandardDeviation()) ? 1 : 0;
		}

	}

}
