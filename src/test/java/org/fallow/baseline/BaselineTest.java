package org.fallow.baseline;

import java.util.Arrays;
import java.util.List;

import org.assertj.core.data.Offset;
import org.fallow.entry.Posture;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** Baselines, and deviations, at their edges and with bad input. */
class BaselineTest {

	private static final RuleSet RULES = DefaultRules.ruleSet();

	private static double[] constant(int n, double value) {
		double[] values = new double[n];
		Arrays.fill(values, value);
		return values;
	}

	@Test
	void needsSevenReadingsAndIsProvisionalBelowFourteen() {
		assertThat(baseline(constant(6, 50))).isNull();
		assertThat(baseline(constant(7, 50)).isProvisional(RULES.baseline())).isTrue();
		assertThat(baseline(constant(13, 50)).isProvisional(RULES.baseline())).isTrue();
		assertThat(baseline(constant(14, 50)).isProvisional(RULES.baseline())).isFalse();
		assertThat(HrvBaseline.of(constant(6, 4), RULES.baseline())).isNull();
		assertThat(HrvBaseline.of(constant(7, 4), RULES.baseline()).n()).isEqualTo(7);
	}

	@Test
	void givesAConstantSeriesTheLeastSpread() {
		assertThat(baseline(constant(28, 50)))
			.isEqualTo(new RhrBaseline(28, 50, 1, new Line(28, null, List.of(50.0, 50.0, 50.0), 0.0, 4)));
		assertThat(HrvBaseline.of(constant(28, 4), RULES.baseline())).isEqualTo(new HrvBaseline(28, 4, 0.05));
	}

	/** Spread = 1.4826 MAD (D). */
	@Test
	void takesMedianAndScaledMad() {
		RhrBaseline baseline = baseline(new double[] { 41, 41, 42, 42, 44, 46, 49 });
		assertThat(baseline).isEqualTo(new RhrBaseline(7, 42, 1.4826, new Line(7, null, List.of(49.0), 7.0, 8)));
		assertThat(HrvBaseline.of(new double[] { 4.10, 4.20, 4.05, 4.15, 4.30, 4.00, 4.25 }, RULES.baseline()).sd())
			.isCloseTo(0.108012, Offset.offset(1e-6));
	}

	/** Edges of the flags, by hand from the decision text (D). */
	@ParameterizedTest
	@CsvSource({ "1,4,3.9,WITHIN", "1,4,4,RAISED", "1,4,9.9,RAISED", "1,4,10,HIGH", "1,4,19.9,HIGH", "1,4,20,VERY_HIGH",
			"1,4,-5,WITHIN", "1,4,-5.1,LOW", "1,8,7.9,WITHIN", "1,8,8,RAISED", "3,5.5,5.4,WITHIN", "3,5.5,5.5,RAISED",
			"3,4,-6,WITHIN", "3,4,-6.1,LOW", "5,4,12.4,RAISED", "5,4,12.5,HIGH", "9,8,14.9,RAISED", "9,8,15,HIGH",
			"9,8,20,VERY_HIGH" })
	void flagsADeviation(double spread, double line, double dev, RhrFlag flag) {
		Deviation deviation = Deviation.of(50 + dev, baseline(14, 50, spread, line), Posture.LYING, RULES.flags());
		assertThat(deviation.flag()).isEqualTo(flag);
		assertThat(deviation.line()).isEqualTo(line);
	}

	/** 54.1 - 50.1 is 3.9999999999999964 in binary. */
	@Test
	void comparesInExactDecimals() {
		Deviation deviation = Deviation.of(54.1, baseline(14, 50.1, 1, 4), Posture.LYING, RULES.flags());
		assertThat(deviation.dev()).isEqualTo(4);
		assertThat(deviation.flag()).isEqualTo(RhrFlag.RAISED);
	}

	/** Adults at rest have 60 to 100 (textbook, from memory). */
	@ParameterizedTest
	@CsvSource({ "99.9,LYING,false", "100,LYING,true", "99,SITTING,false", "100,SITTING,true", "100,STANDING,false",
			"119.9,STANDING,false", "120,STANDING,true" })
	void findsAPulseTooFastForAnybodyAtRest(double bpm, Posture posture, boolean tooFast) {
		assertThat(RhrFlag.isTooFast(bpm, posture, RULES.flags())).isEqualTo(tooFast);
		RhrFlag flag = Deviation.of(bpm, baseline(14, bpm, 1, 4), posture, RULES.flags()).flag();
		assertThat(flag).isEqualTo(tooFast ? RhrFlag.VERY_HIGH : RhrFlag.WITHIN);
	}

	private static RhrBaseline baseline(int n, double median, double spread, double line) {
		return new RhrBaseline(n, median, spread, new Line(n, null, List.of(), null, line));
	}

	private static RhrBaseline baseline(double[] readings) {
		return RhrBaseline.of(readings, readings, -1, RULES);
	}

	@ParameterizedTest
	@ValueSource(doubles = { Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY })
	void refusesWhatIsNoNumber(double bad) {
		double[] values = constant(8, 50);
		values[3] = bad;
		assertThatIllegalArgumentException().isThrownBy(() -> baseline(values));
		assertThatIllegalArgumentException().isThrownBy(() -> HrvBaseline.of(values, RULES.baseline()));
		assertThatIllegalArgumentException().isThrownBy(() -> Statistics.mean(values));
		assertThatIllegalArgumentException().isThrownBy(() -> Statistics.mad(values));
		assertThatIllegalArgumentException()
			.isThrownBy(() -> Deviation.of(bad, baseline(14, 50, 1, 4), Posture.LYING, RULES.flags()));
		assertThatIllegalArgumentException().isThrownBy(() -> baseline(14, bad, 1, 4));
		assertThatIllegalArgumentException().isThrownBy(() -> baseline(14, 50, bad, 4));
		assertThatIllegalArgumentException().isThrownBy(() -> new HrvBaseline(14, bad, 1));
		assertThatIllegalArgumentException().isThrownBy(() -> new HrvBaseline(14, 4, bad));
		assertThatIllegalArgumentException().isThrownBy(() -> new Deviation(bad, 3, -5, 10, RhrFlag.WITHIN));
		assertThatIllegalArgumentException().isThrownBy(() -> new Deviation(0, bad, -5, 10, RhrFlag.WITHIN));
		assertThatIllegalArgumentException().isThrownBy(() -> new Deviation(0, 3, bad, 10, RhrFlag.WITHIN));
		assertThatIllegalArgumentException().isThrownBy(() -> new Deviation(0, 3, -5, bad, RhrFlag.WITHIN));
	}

	@Test
	void takesABaselineOfOneReadingWhereTheRulesAllowIt() {
		assertThat(baseline(1, 50, 1, 4).n()).isEqualTo(1);
		assertThat(new HrvBaseline(1, 4, 0.05).n()).isEqualTo(1);
	}

	@Test
	void refusesWhatNoReadingsGive() {
		assertThatIllegalArgumentException().isThrownBy(() -> baseline(0, 50, 1, 4));
		assertThatIllegalArgumentException().isThrownBy(() -> baseline(14, 0, 1, 4));
		assertThatIllegalArgumentException().isThrownBy(() -> baseline(14, 50, 0, 4));
		assertThatIllegalArgumentException().isThrownBy(() -> new HrvBaseline(0, 4, 0.1));
		assertThatIllegalArgumentException().isThrownBy(() -> new HrvBaseline(14, 4, 0));
	}

}
