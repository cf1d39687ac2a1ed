package org.fallow.training.core;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class HeartRateCeilingTest {

	/** Karvonen, worked example (D): age 55, maximum 220 - 55, resting 62, 60 %. */
	@Test
	void givesTheWorkedExampleOfTheReserve() {
		HeartRateCeiling ceiling = HeartRateCeiling.ofReserve(MaximumHeartRate.measured(220 - 55), 62, 0.60);
		assertThat(ceiling.bpm()).isCloseTo(123.8, Offset.offset(1e-9));
		assertThat(ceiling.estimated()).isFalse();
	}

	@Test
	void takesAShareOfTheMaximum() {
		assertThat(HeartRateCeiling.ofMaximum(MaximumHeartRate.measured(180), 0.75).bpm()).isEqualTo(135);
		assertThat(HeartRateCeiling.ofMaximum(MaximumHeartRate.measured(180), 1).bpm()).isEqualTo(180);
		assertThat(HeartRateCeiling.ofReserve(MaximumHeartRate.measured(180), 50, 1).bpm()).isEqualTo(180);
	}

	/** Tanaka 2001 (M): 208 - 0.7 age, plus or minus 10 bpm. */
	@Test
	void estimatesTheMaximumFromAgeAndSaysSo() {
		MaximumHeartRate estimate = MaximumHeartRate.estimated(40);
		assertThat(estimate.bpm()).isEqualTo(180);
		assertThat(estimate.plusMinusBpm()).isEqualTo(10);
		assertThat(estimate.isEstimate()).isTrue();
		assertThat(MaximumHeartRate.measured(191).isEstimate()).isFalse();
		assertThat(HeartRateCeiling.ofMaximum(estimate, 0.8).estimated()).isTrue();
		assertThat(HeartRateCeiling.ofReserve(estimate, 50, 0.6).estimated()).isTrue();
	}

	@Test
	void estimatesForAdultsOnly() {
		assertThat(MaximumHeartRate.estimated(18).bpm()).isCloseTo(195.4, Offset.offset(1e-9));
		assertThat(MaximumHeartRate.estimated(100).bpm()).isCloseTo(138, Offset.offset(1e-9));
		assertThatIllegalArgumentException().isThrownBy(() -> MaximumHeartRate.estimated(17));
		assertThatIllegalArgumentException().isThrownBy(() -> MaximumHeartRate.estimated(101));
	}

	@ParameterizedTest
	@ValueSource(doubles = { 0, -0.5, 1.01, Double.NaN, Double.POSITIVE_INFINITY })
	void refusesAShareThatIsNone(double share) {
		MaximumHeartRate maximum = MaximumHeartRate.measured(180);
		assertThatIllegalArgumentException().isThrownBy(() -> HeartRateCeiling.ofMaximum(maximum, share));
		assertThatIllegalArgumentException().isThrownBy(() -> HeartRateCeiling.ofReserve(maximum, 50, share));
	}

	@ParameterizedTest
	@ValueSource(doubles = { 19.9, -50, 180, 200, Double.NaN, Double.NEGATIVE_INFINITY })
	void refusesARestingRateThatIsNone(double resting) {
		MaximumHeartRate maximum = MaximumHeartRate.measured(180);
		assertThatIllegalArgumentException().isThrownBy(() -> HeartRateCeiling.ofReserve(maximum, resting, 0.6));
	}

	@ParameterizedTest
	@ValueSource(doubles = { 99.9, 240.1, 0, -180, Double.NaN, Double.POSITIVE_INFINITY })
	void refusesAMaximumThatIsNone(double bpm) {
		assertThatIllegalArgumentException().isThrownBy(() -> MaximumHeartRate.measured(bpm));
	}

	@Test
	void takesThePlausibleEdges() {
		assertThat(MaximumHeartRate.measured(100).bpm()).isEqualTo(100);
		assertThat(MaximumHeartRate.measured(240).bpm()).isEqualTo(240);
		assertThat(HeartRateCeiling.ofReserve(MaximumHeartRate.measured(180), 20, 0.5).bpm()).isEqualTo(100);
	}

	@ParameterizedTest
	@ValueSource(doubles = { 0, -1, Double.NaN, Double.POSITIVE_INFINITY })
	void refusesACeilingThatIsNone(double bpm) {
		assertThatIllegalArgumentException().isThrownBy(() -> new HeartRateCeiling(bpm, false));
	}

	@ParameterizedTest
	@ValueSource(doubles = { -1, Double.NaN, Double.POSITIVE_INFINITY })
	void refusesAnUncertaintyThatIsNone(double plusMinus) {
		assertThatIllegalArgumentException().isThrownBy(() -> new MaximumHeartRate(180, plusMinus));
	}

}
