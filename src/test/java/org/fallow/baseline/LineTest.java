package org.fallow.baseline;

import java.util.Arrays;
import java.util.List;

import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** The line at every edge, by hand from the decision text (D). */
class LineTest {

	private static final RuleSet RULES = DefaultRules.ruleSet();

	private static final RuleSet.Line NUMBERS = RULES.line();

	/** So many readings of 50, the first ones replaced by those given. */
	private static double[] with(int n, double... high) {
		double[] readings = new double[n];
		Arrays.fill(readings, 50);
		System.arraycopy(high, 0, readings, 0, Math.min(n, high.length));
		return readings;
	}

	/**
	 * Third-highest from 21 readings, second-highest of 11-20, highest of 10 or fewer.
	 */
	@ParameterizedTest
	@CsvSource({ "4, 8", "5, 7.5", "10, 7.5", "11, 6.5", "20, 6.5", "21, 4.5", "28, 4.5" })
	void takesTheReadingOfTheRank(int n, double bpm) {
		assertThat(Line.of(with(n, 53, 56, 55), -1, 50, NUMBERS).bpm()).isEqualTo(bpm);
	}

	@ParameterizedTest
	@CsvSource({ "52.4, 4", "52.5, 4", "52.6, 4.1", "56.4, 7.9", "56.5, 8", "56.6, 8", "44, 4", "70, 8" })
	void isNeverUnderFourNorOverEight(double third, double bpm) {
		Line line = Line.of(with(21, 80, 80, third, third), -1, 50, NUMBERS);
		assertThat(line.bpm()).isEqualTo(bpm);
		assertThat(line.upper()).isEqualTo(Exact.decimal(Math.max(third, 50) - 50));
	}

	/** With ten or fewer it would hide its own pair. */
	@Test
	void leavesTheReadingBeforeOutWhereReadingsAreFew() {
		assertThat(Line.of(with(10, 56), 0, 50, NUMBERS)).isEqualTo(new Line(10, 56.0, List.of(50.0), 0.0, 4));
		assertThat(Line.of(with(11, 56), 0, 50, NUMBERS)).isEqualTo(new Line(11, null, List.of(56.0, 50.0), 0.0, 4));
		assertThat(Line.of(with(10, 56), 5, 50, NUMBERS).bpm()).as("another one is left out").isEqualTo(7.5);
	}

	@Test
	void isEightWithFewerThanFiveReadingsOrNone() {
		assertThat(Line.of(with(4), -1, 50, NUMBERS)).isEqualTo(new Line(4, null, List.of(50.0), 0.0, 8));
		assertThat(Line.of(with(5), 0, 50, NUMBERS)).isEqualTo(new Line(5, 50.0, List.of(50.0), 0.0, 4));
		assertThat(Line.of(with(1), 0, 50, NUMBERS)).isEqualTo(new Line(1, 50.0, List.of(), null, 8));
		assertThat(Line.of(with(0), -1, 50, NUMBERS)).isEqualTo(new Line(0, null, List.of(), null, 8));
	}

	/** 53.3 - 50.1 is 3.1999999999999957 in binary. */
	@Test
	void isAnExactDecimal() {
		assertThat(Line.of(with(5, 53.3), -1, 50.1, NUMBERS).upper()).isEqualTo(3.2);
		assertThat(Line.of(with(5, 53.3), -1, 50.1, NUMBERS).bpm()).isEqualTo(4.7);
	}

	/** They average at least L and neither is under max(4, L - 2). */
	@ParameterizedTest
	@CsvSource({ "4, 4, 4, true", "4, 3.9, 4, false", "3.9, 10, 4, false", "10, 3.9, 4, false", "4, 10, 4, true",
			"8, 8, 8, true", "10, 6, 8, true", "6, 10, 8, true", "9.9, 6, 8, false", "12, 5.9, 8, false",
			"5.5, 5.4, 5.5, false", "6, 5, 5.5, true", "7, 4, 5.5, true", "7.1, 3.9, 5.5, false" })
	void findsAPair(double dev, double before, double line, boolean pair) {
		assertThat(Line.isPair(dev, before, line, NUMBERS)).isEqualTo(pair);
	}

	@ParameterizedTest
	@CsvSource({ "8, 4, true", "7.9, 4, false", "9.4, 4.7, true", "9.3, 4.7, false", "16, 8, true", "15.9, 8, false" })
	void isFarAboveFromTwiceTheLine(double dev, double line, boolean far) {
		assertThat(Line.isFarAbove(dev, line, NUMBERS)).isEqualTo(far);
	}

	/** dev < min(L, max(4, 2 spread + 1)); with fewer than five readings dev < 4. */
	@ParameterizedTest
	@CsvSource({ "28, 1, 4, 4", "28, 1, 8, 4", "28, 1.5, 8, 4", "28, 2, 8, 5", "28, 3.5, 8, 8", "28, 9, 5.5, 5.5",
			"4, 3, 8, 4", "5, 3, 8, 7" })
	void saysWhatIsQuiet(int n, double spread, double line, double below) {
		assertThat(Line.quietBelow(n, spread, line, RULES)).isEqualTo(below);
	}

	@Test
	void refusesWhatNoMorningsGive() {
		assertThatIllegalArgumentException().isThrownBy(() -> new Line(-1, null, List.of(), null, 8));
		assertThatIllegalArgumentException().isThrownBy(() -> new Line(5, null, List.of(50.0), Double.NaN, 8));
		assertThatIllegalArgumentException().isThrownBy(() -> new Line(5, null, List.of(50.0), 0.0, 0));
		assertThatIllegalArgumentException().isThrownBy(() -> new Line(5, null, List.of(50.0), 0.0, Double.NaN));
	}

}
