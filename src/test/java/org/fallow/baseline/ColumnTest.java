package org.fallow.baseline;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

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
	private static final RuleSet.Baseline WIDE = RuleEdit.of(RULES, Map.of("/baseline/windowDays", "42"))
		.rules()
		.baseline();

	@ParameterizedTest
	@ValueSource(ints = { 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11 })
	void answersAsTheWholeWindowDoesToTheLastBit(int seed) {
		Random random = new Random(seed);
		RuleSet.Baseline numbers = (seed % 2 == 0) ? NUMBERS : WIDE;
		Column column = new Column(numbers);
		TreeMap<Integer, Double> readings = new TreeMap<>();
		for (int day = 0; day < 400; day++) {
			if (random.nextInt(10) < seed) {
				double value = 40 + random.nextInt(300) / 10.0;
				column.add(day, value);
				readings.put(day, value);
			}
			int asked = (random.nextInt(3) > 0) ? day : random.nextInt(day + 10);
			double[] window = window(readings, asked, numbers);
			assertThat(column.readings(asked)).isEqualTo(window.length);
			assertThat(column.rhrBaseline(asked)).isEqualTo(RhrBaseline.of(window, numbers));
			assertThat(column.hrvBaseline(asked)).isEqualTo(HrvBaseline.of(window, numbers));
			int from = random.nextInt(day + 5);
			assertThat(column.count(from, asked))
				.isEqualTo((from < asked) ? readings.subMap(from, true, asked, false).size() : 0);
		}
	}

	private static double[] window(TreeMap<Integer, Double> readings, int day) {
		return window(readings, day, NUMBERS);
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
		Column column = new Column(NUMBERS);
		for (int day = 0; day < 20; day++) {
			column.add(day, 50);
		}
		RhrBaseline before = column.rhrBaseline(30);
		column.add(25, 90);
		assertThat(before).isEqualTo(new RhrBaseline(18, 50, 1));
		assertThat(column.rhrBaseline(30)).isEqualTo(new RhrBaseline(19, 50, 1));
		assertThat(column.rhrBaseline(25)).as("the day of the reading itself").isEqualTo(new RhrBaseline(20, 50, 1));
	}

	@Test
	void refusesAReadingThatIsNotTheNextOrNoNumber() {
		Column column = new Column(NUMBERS);
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
		new DailyFlags(RULES, 0).rhr(days, rhr, dev, rhrFlags);
		new DailyFlags(RULES, 0).hrv(days, ln, hrvFlags);
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
			Deviation expected = Deviation.of(rhr[i], new RhrBaseline(window.length, median, Math.max(1, 1.4826 * mad)),
					0, RULES.flags());
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
