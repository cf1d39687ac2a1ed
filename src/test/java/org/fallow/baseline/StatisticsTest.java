package org.fallow.baseline;

import java.io.IOException;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.assertj.core.data.Offset;
import org.fallow.illness.core.SharedData;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class StatisticsTest {

	private static final Offset<Double> NANO = Offset.offset(1e-9);

	/** NIST StRD, NumAcc1, certified values. */
	@Test
	void holdsNumAcc1() {
		double[] values = { 10000001, 10000003, 10000002 };
		assertThat(Statistics.mean(values)).isEqualTo(10000002);
		assertThat(Statistics.sd(values)).isEqualTo(1);
	}

	/** NIST StRD, NumAcc4, certified values; a one-pass variance gives -2 here. */
	@Test
	void holdsNumAcc4() {
		double[] values = DoubleStream
			.concat(DoubleStream.of(10000000.2),
					IntStream.range(0, 1000).mapToDouble((i) -> (i % 2 == 0) ? 10000000.1 : 10000000.3))
			.toArray();
		assertThat(Statistics.mean(values)).isCloseTo(10000000.2, Offset.offset(1e-8));
		assertThat(Statistics.sd(values)).isCloseTo(0.1, Offset.offset(1e-8));
	}

	/** NIST StRD, Mavro, certified values. */
	@Test
	void holdsMavro() throws IOException {
		double[] values = Files.readAllLines(SharedData.folder().resolve("nist_mavro.txt"))
			.stream()
			.filter((line) -> !line.startsWith("#"))
			.flatMap((line) -> Arrays.stream(line.strip().split("\\s+")))
			.mapToDouble(Double::parseDouble)
			.toArray();
		assertThat(values).hasSize(50);
		assertThat(Statistics.mean(values)).isCloseTo(2.001856, Offset.offset(1e-12));
		assertThat(Statistics.sd(values)).isCloseTo(0.000429123454003053, Offset.offset(1e-12));
	}

	/** From the definition of the MAD, as R's help gives it too. */
	@Test
	void computesTheMadOfSmallSets() {
		assertThat(Statistics.mad(new double[] { 1, 1, 2, 2, 4, 6, 9 })).isEqualTo(1);
		assertThat(Statistics.mad(IntStream.rangeClosed(1, 9).asDoubleStream().toArray())).isEqualTo(2);
	}

	/** NIST 1.3.5.17, recomputed by us: modified z of 245.57 is 29.9627. */
	@Test
	void givesTheModifiedZOfAnOutlier() {
		double[] values = { 199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57 };
		double z = 0.6745 * (245.57 - Statistics.median(values)) / Statistics.mad(values);
		assertThat(z).isCloseTo(29.9627, Offset.offset(1e-4));
	}

	/** Recomputed by us on the rule: mean and SD (n - 1), half an SD to each side. */
	@Test
	void givesTheBandOfSevenMornings() {
		double[] ln = { 4.10, 4.20, 4.05, 4.15, 4.30, 4.00, 4.25 };
		double half = Statistics.sd(ln) / 2;
		assertThat(Statistics.mean(ln) - half).isCloseTo(4.095994, Offset.offset(1e-6));
		assertThat(Statistics.mean(ln) + half).isCloseTo(4.204006, Offset.offset(1e-6));
	}

	/** Recomputed by us: why a day is never in its own baseline. */
	@Test
	void cannotSeeAnOutlierFromWithinItsOwnWindow() {
		double[] values = { 0, 0, 0, 0, 0, 0, 1e9 };
		double z = (values[6] - Statistics.mean(values)) / Statistics.sd(values);
		assertThat(z).isCloseTo(2.268, Offset.offset(1e-3));
	}

	/** Six daily series computed with pandas, and a general statistics library beside. */
	@Test
	void agreesWithPandasAndAGeneralLibraryOnSixSeries() throws IOException {
		Map<String, TreeMap<LocalDate, Double>> series = new TreeMap<>();
		int checked = 0;
		for (NamedCsvRecord row : rows()) {
			TreeMap<LocalDate, Double> values = series.computeIfAbsent(row.getField("person") + row.getField("metric"),
					(key) -> new TreeMap<>());
			LocalDate day = LocalDate.parse(row.getField("date"));
			double[] window = doubles(values.subMap(day.minusDays(28), true, day, false).values());
			assertThat(window).hasSize(Integer.parseInt(row.getField("n28")));
			if (!row.getField("median28").isEmpty()) {
				check(row, window);
				checked++;
			}
			if (!row.getField("x").isEmpty()) {
				values.put(day, Double.valueOf(row.getField("x")));
			}
			if (!row.getField("mean7").isEmpty()) {
				double[] week = doubles(values.subMap(day.minusDays(6), true, day, true).values());
				assertThat(Statistics.mean(week)).isCloseTo(value(row, "mean7"), NANO);
			}
		}
		assertThat(checked).isGreaterThan(500);
	}

	private static void check(NamedCsvRecord row, double[] window) {
		DescriptiveStatistics library = new DescriptiveStatistics(window);
		assertThat(Statistics.median(window)).isCloseTo(value(row, "median28"), NANO)
			.isCloseTo(library.getPercentile(50), NANO);
		assertThat(Statistics.mean(window)).isCloseTo(value(row, "mean28"), NANO).isCloseTo(library.getMean(), NANO);
		assertThat(Statistics.sd(window)).isCloseTo(value(row, "sd28"), NANO)
			.isCloseTo(library.getStandardDeviation(), NANO);
		assertThat(Statistics.mad(window)).isCloseTo(value(row, "mad28"), NANO);
	}

	private static List<NamedCsvRecord> rows() throws IOException {
		try (CsvReader<NamedCsvRecord> csv = CsvReader.builder()
			.ofNamedCsvRecord(SharedData.folder().resolve("rolling_oracle.csv"))) {
			return csv.stream().toList();
		}
	}

	private static double[] doubles(Collection<Double> values) {
		return values.stream().mapToDouble(Double::doubleValue).toArray();
	}

	private static double value(NamedCsvRecord row, String column) {
		return Double.parseDouble(row.getField(column));
	}

	@Test
	void refusesTooFewAndNoNumbers() {
		assertThatIllegalArgumentException().isThrownBy(() -> Statistics.mean(new double[0]));
		assertThatIllegalArgumentException().isThrownBy(() -> Statistics.sd(new double[] { 1 }));
		for (double bad : new double[] { Double.NaN, Double.POSITIVE_INFINITY }) {
			assertThatIllegalArgumentException().isThrownBy(() -> Statistics.median(new double[] { 1, bad }));
		}
	}

	@Test
	void takesTheFewestValuesThereCanBe() {
		assertThat(Statistics.mean(new double[] { 51 })).isEqualTo(51);
		assertThat(Statistics.median(new double[] { 51 })).isEqualTo(51);
		assertThat(Statistics.sd(new double[] { 50, 52 })).isCloseTo(Math.sqrt(2), NANO);
	}

	@Test
	void givesAConstantSeriesNoSpread() {
		assertThat(Statistics.sd(new double[] { 50, 50, 50 })).isZero();
		assertThat(Statistics.mad(new double[] { 50, 50, 50 })).isZero();
	}

}
