package org.fallow.baseline;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

import org.fallow.entry.Posture;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleEdit;
import org.fallow.rules.RuleSet;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

/**
 * A column answers as if each window were gathered anew, whatever was asked before.
 */
class ColumnTest {

	private static final RuleSet RULES = DefaultRules.ruleSet();

	private static final RuleSet.Baseline NUMBERS = RULES.baseline();

	/** The widest window a coach may set. */
	private static final RuleSet WIDE = RuleEdit.of(RULES, Map.of("/baseline/windowDays", "42")).rules();

	@ParameterizedTest
	@ValueSource(ints = { 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11 })
	void answersAsTheWholeWindowDoesToTheLastBit(int seed) {
		Random random = new Random(seed);
		RuleSet rules = (seed % 2 == 0) ? RULES : WIDE;
		Column column = new Column(rules);
		TreeMap<Integer, Double> readings = new TreeMap<>();
		TreeMap<Integer, Boolean> eligible = new TreeMap<>();
		for (int day = 0; day < 400; day++) {
			if (random.nextInt(10) < seed) {
				double value = 40 + random.nextInt(300) / 10.0;
				column.add(day, value);
				readings.put(day, value);
				eligible.put(day, true);
			}
			else if (random.nextInt(10) == 0) {
				column.passOver(day);
				eligible.put(day, false);
			}
			int asked = (random.nextInt(3) > 0) ? day : random.nextInt(day + 10);
			double[] window = window(readings, asked, rules.baseline());
			assertThat(column.readings(asked)).isEqualTo(window.length);
			RhrBaseline expected = RhrBaseline.of(window, recent(readings, asked),
					before(eligible, readings, asked, rules), rules);
			assertThat(column.rhrBaseline(asked)).isEqualTo(expected);
			if (expected != null && column.moveTo(asked)) {
				assertThat(column.lineBpm(asked, column.median())).isEqualTo(expected.line().bpm());
			}
			assertThat(column.hrvBaseline(asked)).isEqualTo(HrvBaseline.of(window, rules.baseline()));
			int from = random.nextInt(day + 5);
			assertThat(column.count(from, asked))
				.isEqualTo((from < asked) ? readings.subMap(from, true, asked, false).size() : 0);
		}
	}

	private static double[] window(TreeMap<Integer, Double> readings, int day) {
		return window(readings, day, NUMBERS);
	}

	/** The readings of the 28 days before a day. */
	private static double[] recent(TreeMap<Integer, Double> readings, int day) {
		return plain(readings.subMap(day - RULES.line().days(), true, day, false).values());
	}

	private static double[] plain(Collection<Double> values) {
		return values.stream().mapToDouble(Double::doubleValue).toArray();
	}

	/** Which of the readings of the 28 days is the latest of a day with a baseline. */
	private static int before(TreeMap<Integer, Boolean> eligible, TreeMap<Integer, Double> readings, int day,
			RuleSet rules) {
		for (int d = day - 1; d >= day - RULES.line().days(); d--) {
			boolean has = window(readings, d, rules.baseline()).length >= NUMBERS.provisionalFrom();
			if (eligible.containsKey(d) && has) {
				return eligible.get(d) ? readings.subMap(day - RULES.line().days(), true, d, false).size() : -1;
			}
		}
		return -1;
	}

	private static RhrBaseline constant(int n, int recent, Double leftOut, int rank) {
		return new RhrBaseline(n, 50, 1, new Line(recent, leftOut, Collections.nCopies(rank, 50.0), 0.0, 4));
	}

	/** The rule, gathered plainly: 28 days, or the last 14 readings of 60 if few. */
	private static double[] window(TreeMap<Integer, Double> readings, int day, RuleSet.Baseline numbers) {
		List<Double> window = List.copyOf(readings.subMap(day - numbers.windowDays(), true, day, false).values());
		if (window.size() < numbers.fewReadings()) {
			List<Double> older = List.copyOf(readings.subMap(day - numbers.fallbackDays(), true, day, false).values());
			window = older.subList(Math.max(0, older.size() - numbers.fallbackReadings()), older.size());
		}
		return window.stream().mapToDouble(Double::doubleValue).toArray();
	}

	@Test
	void takesNewReadingsIntoBaselinesOfDaysAskedForBefore() {
		Column column = new Column(RULES);
		for (int day = 0; day < 20; day++) {
			column.add(day, 50);
		}
		RhrBaseline before = column.rhrBaseline(30);
		column.add(25, 90);
		assertThat(before).isEqualTo(constant(18, 18, null, 2));
		assertThat(column.rhrBaseline(30))
			.isEqualTo(new RhrBaseline(19, 50, 1, new Line(19, null, List.of(90.0, 50.0), 0.0, 4)));
		assertThat(column.rhrBaseline(25)).as("the day of the reading itself").isEqualTo(constant(20, 20, null, 2));
	}

	@Test
	void refusesAReadingThatIsNotTheNextOrNoNumber() {
		Column column = new Column(RULES);
		column.add(5, 50);
		assertThatIllegalArgumentException().isThrownBy(() -> column.add(5, 51)).withMessageContaining("5");
		assertThatIllegalArgumentException().isThrownBy(() -> column.add(4, 51));
		assertThatIllegalArgumentException().isThrownBy(() -> column.add(6, Double.NaN));
	}

	/** Against a general library, Hipparchus 4.0.3, window by window. */
	@Test
	void flagsASeasonAsAGeneralLibraryDoes() {
		Random random = new Random(11);
		int[] days = random.ints(0, 500).distinct().limit(300).sorted().toArray();
		double[] rhr = random.doubles(days.length, 44, 56).map((v) -> Math.round(v * 10) / 10.0).toArray();
		double[] ln = random.doubles(days.length, 3.5, 4.5).toArray();
		double[] dev = new double[days.length];
		byte[] rhrFlags = new byte[days.length];
		byte[] hrvFlags = new byte[days.length];
		boolean[] above = new boolean[days.length];
		new DailyFlags(RULES, Posture.LYING).rhr(days, rhr, dev, rhrFlags, above);
		new DailyFlags(RULES, Posture.LYING).hrv(days, ln, hrvFlags);
		List<Byte> seen = new ArrayList<>();
		for (int i = 0; i < days.length; i++) {
			double[] window = window(before(days, rhr, i), days[i]);
			if (window.length < NUMBERS.provisionalFrom()) {
				assertThat(rhrFlags[i]).isEqualTo(DailyFlags.NONE);
				assertThat(hrvFlags[i]).isEqualTo(DailyFlags.NONE);
				continue;
			}
			double median = new DescriptiveStatistics(window).getPercentile(50);
			double mad = new DescriptiveStatistics(distances(window, median)).getPercentile(50);
			Line line = Line.of(recent(before(days, rhr, i), days[i]),
					before(eligible(days, i), before(days, rhr, i), days[i], RULES), median, RULES.line());
			RhrBaseline normal = new RhrBaseline(window.length, median, Math.max(1, 1.4826 * mad), line);
			Deviation expected = Deviation.of(rhr[i], normal, Posture.LYING, RULES.flags());
			assertThat(dev[i]).isCloseTo(expected.dev(), within(1e-12));
			assertThat(RhrFlag.values()[rhrFlags[i]]).isEqualTo(expected.flag());
			seen.add(rhrFlags[i]);
			DescriptiveStatistics baseline = new DescriptiveStatistics(window(before(days, ln, i), days[i]));
			DescriptiveStatistics recent = new DescriptiveStatistics();
			for (int k = 0; k <= i; k++) {
				if (days[k] > days[i] - RULES.hrv().days()) {
					recent.addValue(ln[k]);
				}
			}
			boolean low = recent.getMean() < baseline.getMean()
					- Math.max(0.05, baseline.getStandardDeviation()) * RULES.hrv().suppressedSds();
			byte expectedHrv = (recent.getN() < RULES.hrv().leastReadings()) ? DailyFlags.NONE
					: (byte) (low ? HrvFlag.SUPPRESSED : HrvFlag.NORMAL).ordinal();
			assertThat(hrvFlags[i]).isEqualTo(expectedHrv);
		}
		assertThat(seen).contains((byte) RhrFlag.WITHIN.ordinal(), (byte) RhrFlag.RAISED.ordinal());
	}

	private static TreeMap<Integer, Boolean> eligible(int[] days, int index) {
		TreeMap<Integer, Boolean> eligible = new TreeMap<>();
		for (int i = 0; i < index; i++) {
			eligible.put(days[i], true);
		}
		return eligible;
	}

	private static TreeMap<Integer, Double> before(int[] days, double[] values, int index) {
		TreeMap<Integer, Double> readings = new TreeMap<>();
		for (int i = 0; i < index; i++) {
			readings.put(days[i], values[i]);
		}
		return readings;
	}

	private static double[] distances(double[] window, double median) {
		double[] distances = new double[window.length];
		for (int i = 0; i < window.length; i++) {
			distances[i] = Math.abs(window[i] - median);
		}
		return distances;
	}

}
