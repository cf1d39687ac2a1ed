package org.fallow.entry;

import java.io.IOException;
import java.util.Arrays;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.assertj.core.data.Offset;
import org.fallow.illness.core.SharedData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class RrSeriesTest {

	private static final Offset<Double> MICRO = Offset.offset(1e-6);

	/** Recomputed by us from the Task Force definitions. */
	@Test
	void computesTheFiguresOfFourBeats() {
		RrSeries.Figures figures = RrSeries.of(800, 850, 810, 720).raw();
		assertThat(figures.rmssdMs()).isCloseTo(63.770422, MICRO);
		assertThat(figures.sdnnMs()).isCloseTo(54.467115, MICRO);
		assertThat(figures.heartRateBpm()).isCloseTo(75.4717, Offset.offset(1e-4));
	}

	/** Recomputed by us; NN50 counts differences of strictly more than 50 ms. */
	@Test
	void computesTheFiguresOfSevenBeats() {
		RrSeries.Figures figures = RrSeries.of(1000, 1050, 980, 1020, 1010, 940, 1060).raw();
		assertThat(figures.rmssdMs()).isCloseTo(68.799225, MICRO);
		assertThat(Math.log(figures.rmssdMs())).isCloseTo(4.231192, MICRO);
		assertThat(figures.nn50()).isEqualTo(3);
	}

	/** From the definition: all differences are 20. */
	@Test
	void alternatingBeatsHaveTheirDifferenceAsRmssd() {
		assertThat(RrSeries.of(1000, 1020, 1000, 1020, 1000, 1020).raw().rmssdMs()).isEqualTo(20);
	}

	/** Recomputed by us: two beats merged into one make RMSSD forty times as large. */
	@Test
	void catchesTwoBeatsMergedIntoOne() {
		assertThat(RrSeries.of(1000, 1010, 990, 1005, 995, 1000, 1010, 990).raw().rmssdMs()).isCloseTo(13.887301,
				MICRO);
		RrSeries merged = RrSeries.of(1000, 1010, 990, 2000, 1000, 1010, 990);
		assertThat(merged.raw().rmssdMs()).isCloseTo(580.387801, MICRO);
		assertThat(merged.suspects()).contains(3);
		assertThat(merged.clean().rmssdMs()).isLessThan(20);
		assertThat(merged.isLowQuality()).isTrue();
	}

	/** Malik 1989, from memory; indices recomputed by us. */
	@Test
	void suspectsABeatTwentyPercentFromTheOneBefore() {
		assertThat(RrSeries.of(800, 810, 640, 990, 805, 815).suspects()).containsExactly(2, 3);
	}

	@Test
	void takesNoDifferenceAcrossALeftOutBeat() {
		// 900 to 640 and 640 to 910 are left out; 900-910 are no neighbours
		assertThat(RrSeries.of(900, 900, 640, 910, 910, 910).clean().rmssdMs()).isZero();
	}

	@Test
	void callsLessThanAMinuteLowQuality() {
		double[] short59 = new double[59];
		Arrays.fill(short59, 1000);
		double[] enough = new double[60];
		Arrays.fill(enough, 1000);
		assertThat(RrSeries.of(short59).isLowQuality()).isTrue();
		assertThat(RrSeries.of(enough).isLowQuality()).isFalse();
	}

	/** 90 series of an open dataset (CC0) with published figures, rounded to 0.001. */
	@Test
	void agreesWithNinetyPublishedSeries() throws IOException {
		try (CsvReader<NamedCsvRecord> csv = CsvReader.builder()
			.ofNamedCsvRecord(SharedData.folder().resolve("rr_oracle.csv"))) {
			long checked = csv.stream().peek(RrSeriesTest::check).count();
			assertThat(checked).isEqualTo(90);
		}
	}

	private static void check(NamedCsvRecord row) {
		RrSeries.Figures figures = RrSeries.parse(row.getField("rr_ms")).raw();
		Offset<Double> milli = Offset.offset(0.001);
		assertThat(figures.rmssdMs()).as(row.getField("rr_code")).isCloseTo(value(row, "rmssd"), milli);
		assertThat(figures.sdnnMs()).as(row.getField("rr_code")).isCloseTo(value(row, "sdnn"), milli);
		assertThat(figures.meanRrMs()).isCloseTo(value(row, "meanrr"), milli);
		assertThat(figures.pnn50()).isCloseTo(value(row, "pnn50"), Offset.offset(0.005));
	}

	private static double value(NamedCsvRecord row, String column) {
		return Double.parseDouble(row.getField(column));
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "800", "800 abc", "800 0", "800 -810", "800 NaN", "800,5 x", "1e3 900" })
	void refusesWhatIsNoSeries(String text) {
		assertThatIllegalArgumentException().isThrownBy(() -> RrSeries.parse(text))
			.withMessageContaining("RR interval");
	}

	@Test
	void readsLinesCommasAndSemicolons() {
		assertThat(RrSeries.parse("800\r\n850;810, 720\n").raw().rmssdMs()).isCloseTo(63.770422, MICRO);
	}

	@Test
	void suspectsBeatsOutsideThreeHundredToTwoThousand() {
		assertThat(RrSeries.of(300, 300, 300).suspects()).isEmpty();
		assertThat(RrSeries.of(2000, 2000, 2000).suspects()).isEmpty();
		assertThat(RrSeries.of(299.9, 299.9, 310).suspects()).containsExactly(0, 1);
		assertThat(RrSeries.of(1990, 2000.1, 1990).suspects()).containsExactly(1);
	}

	@Test
	void allowsTwentyPercentAndNoMore() {
		assertThat(RrSeries.of(1000, 1200, 1000).suspects()).isEmpty();
		assertThat(RrSeries.of(1000, 1200.1, 1001).suspects()).containsExactly(1);
		assertThat(RrSeries.of(1000, 799.9, 900).suspects()).containsExactly(1);
	}

	/** Each suspect beat is one of two long ones; the way back is within 20 %. */
	@ParameterizedTest
	@CsvSource({ "5,false", "6,true" })
	void callsMoreThanFiveInAHundredSuspectsLowQuality(int suspects, boolean low) {
		double[] beats = new double[100];
		Arrays.fill(beats, 1000);
		for (int i = 0; i < suspects; i++) {
			beats[10 + 10 * i] = 1201;
			beats[11 + 10 * i] = 1100;
		}
		assertThat(RrSeries.of(beats).suspects()).hasSize(suspects);
		assertThat(RrSeries.of(beats).isLowQuality()).isEqualTo(low);
	}

	@Test
	void takesTwoIntervalsAndTwentyThousandAndNoMore() {
		RrSeries.Figures two = RrSeries.of(800, 810).raw();
		assertThat(two.sdnnMs()).isCloseTo(7.071068, MICRO);
		assertThat(two.rmssdMs()).isEqualTo(10);
		assertThat(RrSeries.parse("800 ".repeat(20_000)).milliseconds()).hasSize(20_000);
		assertThatIllegalArgumentException().isThrownBy(() -> RrSeries.parse("800 ".repeat(20_001)))
			.withMessageContaining("20000");
	}

	@Test
	void namesTheIntervalThatIsNone() {
		assertThatIllegalArgumentException().isThrownBy(() -> RrSeries.parse("800 810 x"))
			.withMessageContaining("RR interval 3");
		assertThatIllegalArgumentException().isThrownBy(() -> RrSeries.of(800, 0))
			.withMessageContaining("RR interval 2");
	}

	@Test
	void keepsWholeMilliseconds() {
		assertThat(RrSeries.parse("800.4 810.5").milliseconds()).containsExactly(800, 811);
	}

	@Test
	void hasNoFiguresWithoutACleanBeat() {
		RrSeries.Figures none = RrSeries.of(250, 250).clean();
		assertThat(none).isEqualTo(new RrSeries.Figures(0, null, null, null, 0, 0));
		assertThat(none.heartRateBpm()).isNull();
		assertThat(RrSeries.of(1000, 1300).clean()).isEqualTo(new RrSeries.Figures(1, 1000.0, null, null, 0, 0));
	}

}
