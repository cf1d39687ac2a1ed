package org.fallow.baseline;

import java.util.Arrays;

import org.assertj.core.data.Offset;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** Baselines, deviations and the sustained rise, at their edges and with bad input. */
class BaselineTest {

	private static final RuleSet RULES = DefaultRules.ruleSet();

	private static double[] constant(int n, double value) {
		double[] values = new double[n];
		Arrays.fill(values, value);
		return values;
	}

	@Test
	void needsSevenReadingsAndIsProvisionalBelowFourteen() {
		assertThat(RhrBaseline.of(constant(6, 50), RULES.baseline())).isNull();
		assertThat(RhrBaseline.of(constant(7, 50), RULES.baseline()).isProvisional(RULES.baseline())).isTrue();
		assertThat(RhrBaseline.of(constant(13, 50), RULES.baseline()).isProvisional(RULES.baseline())).isTrue();
		assertThat(RhrBaseline.of(constant(14, 50), RULES.baseline()).isProvisional(RULES.baseline())).isFalse();
		assertThat(HrvBaseline.of(constant(6, 4), RULES.baseline())).isNull();
		assertThat(HrvBaseline.of(constant(7, 4), RULES.baseline()).n()).isEqualTo(7);
	}

	@Test
	void givesAConstantSeriesTheLeastSpread() {
		assertThat(RhrBaseline.of(constant(28, 50), RULES.baseline())).isEqualTo(new RhrBaseline(28, 50, 1));
		assertThat(HrvBaseline.of(constant(28, 4), RULES.baseline())).isEqualTo(new HrvBaseline(28, 4, 0.05));
	}

	/** Spread = 1.4826 MAD (D). */
	@Test
	void takesMedianAndScaledMad() {
		RhrBaseline baseline = RhrBaseline.of(new double[] { 41, 41, 42, 42, 44, 46, 49 }, RULES.baseline());
		assertThat(baseline).isEqualTo(new RhrBaseline(7, 42, 1.4826));
		assertThat(HrvBaseline.of(new double[] { 4.10, 4.20, 4.05, 4.15, 4.30, 4.00, 4.25 }, RULES.baseline()).sd())
			.isCloseTo(0.108012, Offset.offset(1e-6));
	}

	/**
	 * Edges of the flags, by hand from the decision text (D); step 2 for a 30 s count.
	 */
	@ParameterizedTest
	@CsvSource({ "1,0,3,WITHIN", "1,0,3.1,RAISED", "1,0,9.9,RAISED", "1,0,10,HIGH", "1,0,19.9,HIGH", "1,0,20,VERY_HIGH",
			"1,0,-5,WITHIN", "1,0,-5.1,LOW", "1,2,4,WITHIN", "1,2,4.1,RAISED", "3,0,6,WITHIN", "3,0,6.1,RAISED",
			"3,0,-6,WITHIN", "3,0,-6.1,LOW", "5,0,8,WITHIN", "5,0,8.1,RAISED", "5,0,12.4,RAISED", "5,0,12.5,HIGH",
			"5,2,8,WITHIN", "5,2,8.1,RAISED", "9,0,14.9,RAISED", "9,0,15,HIGH", "9,0,20,VERY_HIGH" })
	void flagsADeviation(double spread, double step, double dev, RhrFlag flag) {
		Deviation deviation = Deviation.of(50 + dev, new RhrBaseline(14, 50, spread), step, RULES.flags());
		assertThat(deviation.flag()).isEqualTo(flag);
		assertThat(deviation.isAboveBand()).isEqualTo(flag.compareTo(RhrFlag.RAISED) >= 0);
	}

	/** k = max(3, spread), h = max(8, 3 spread), S at most 1.5 h (decision text). */
	@ParameterizedTest
	@CsvSource({ "1,3,8", "2.5,3,8", "4,4,12" })
	void takesSlackAndLimitFromTheSpread(double spread, double slack, double limit) {
		assertThat(SustainedRise.slack(spread, RULES.cusum())).isEqualTo(slack);
		assertThat(SustainedRise.limit(spread, RULES.cusum())).isEqualTo(limit);
	}

	@Test
	void signalsAtTheLimitAndIsCapped() {
		SustainedRise rise = after(SustainedRise.NONE, 7);
		assertThat(rise).isEqualTo(new SustainedRise(4, false, 0, 0, false));
		rise = after(rise, 7);
		assertThat(rise.signal()).as("8 is the limit").isTrue();
		assertThat(after(rise, 40).sum()).as("12 a morning, 1.5 h at most").isEqualTo(12);
		assertThat(after(SustainedRise.NONE, 40).sum()).isEqualTo(9);
		assertThat(after(SustainedRise.NONE, -9)).isEqualTo(SustainedRise.NONE);
	}

	@Test
	void endsAfterTwoReadingsRunningWithinBand() {
		SustainedRise rise = after(after(SustainedRise.NONE, 10), 9);
		assertThat(after(rise, 2)).isEqualTo(new SustainedRise(11, true, 1, 0, false));
		assertThat(after(after(rise, 2), 2)).isEqualTo(SustainedRise.NONE);
		assertThat(after(after(rise, 2), 4).inBandRunning()).isZero();
		assertThat(after(after(rise, 2), -6).inBandRunning()).as("low is not within band").isZero();
	}

	@Test
	void zeroesTheSumAfterThreeSilentMorningsWhileTheSignalStands() {
		SustainedRise rise = after(after(SustainedRise.NONE, 10), 9);
		SustainedRise two = rise.afterSilence(RULES.cusum()).afterSilence(RULES.cusum());
		assertThat(two).isEqualTo(new SustainedRise(12, true, 0, 2, false));
		SustainedRise three = two.afterSilence(RULES.cusum());
		assertThat(three).isEqualTo(new SustainedRise(0, true, 0, 3, true));
		assertThat(after(three, 0)).as("then one reading within band is enough").isEqualTo(SustainedRise.NONE);
		assertThat(after(three, 5)).isEqualTo(new SustainedRise(2, true, 0, 0, true));
		assertThat(after(two, 3).silent()).isZero();
	}

	private static SustainedRise after(SustainedRise rise, double dev) {
		RhrBaseline baseline = new RhrBaseline(14, 50, 1);
		return rise.after(Deviation.of(50 + dev, baseline, 0, RULES.flags()), 1, RULES.cusum());
	}

	@ParameterizedTest
	@ValueSource(doubles = { Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY })
	void refusesWhatIsNoNumber(double bad) {
		double[] values = constant(8, 50);
		values[3] = bad;
		assertThatIllegalArgumentException().isThrownBy(() -> RhrBaseline.of(values, RULES.baseline()));
		assertThatIllegalArgumentException().isThrownBy(() -> HrvBaseline.of(values, RULES.baseline()));
		assertThatIllegalArgumentException().isThrownBy(() -> Statistics.mean(values));
		assertThatIllegalArgumentException().isThrownBy(() -> Statistics.mad(values));
		assertThatIllegalArgumentException()
			.isThrownBy(() -> Deviation.of(bad, new RhrBaseline(14, 50, 1), 0, RULES.flags()));
		assertThatIllegalArgumentException().isThrownBy(() -> new SustainedRise(bad, false, 0, 0, false));
		assertThatIllegalArgumentException().isThrownBy(() -> new RhrBaseline(14, bad, 1));
		assertThatIllegalArgumentException().isThrownBy(() -> new RhrBaseline(14, 50, bad));
		assertThatIllegalArgumentException().isThrownBy(() -> new HrvBaseline(14, bad, 1));
		assertThatIllegalArgumentException().isThrownBy(() -> new HrvBaseline(14, 4, bad));
		assertThatIllegalArgumentException().isThrownBy(() -> new Deviation(bad, 3, -5, 10, RhrFlag.WITHIN));
		assertThatIllegalArgumentException().isThrownBy(() -> new Deviation(0, bad, -5, 10, RhrFlag.WITHIN));
		assertThatIllegalArgumentException().isThrownBy(() -> new Deviation(0, 3, bad, 10, RhrFlag.WITHIN));
		assertThatIllegalArgumentException().isThrownBy(() -> new Deviation(0, 3, -5, bad, RhrFlag.WITHIN));
	}

	@Test
	void takesABaselineOfOneReadingWhereTheRulesAllowIt() {
		assertThat(new RhrBaseline(1, 50, 1).n()).isEqualTo(1);
		assertThat(new HrvBaseline(1, 4, 0.05).n()).isEqualTo(1);
	}

	@Test
	void refusesWhatNoReadingsGive() {
		assertThatIllegalArgumentException().isThrownBy(() -> new RhrBaseline(0, 50, 1));
		assertThatIllegalArgumentException().isThrownBy(() -> new RhrBaseline(14, 0, 1));
		assertThatIllegalArgumentException().isThrownBy(() -> new RhrBaseline(14, 50, 0));
		assertThatIllegalArgumentException().isThrownBy(() -> new HrvBaseline(0, 4, 0.1));
		assertThatIllegalArgumentException().isThrownBy(() -> new HrvBaseline(14, 4, 0));
		assertThatIllegalArgumentException().isThrownBy(() -> new SustainedRise(-0.1, false, 0, 0, false));
		assertThatIllegalArgumentException().isThrownBy(() -> new SustainedRise(0, false, -1, 0, false));
		assertThatIllegalArgumentException().isThrownBy(() -> new SustainedRise(0, false, 0, -1, false));
	}

}
