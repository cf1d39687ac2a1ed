package org.fallow.rules;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;

class ClearanceOrderTest {

	@ParameterizedTest
	@EnumSource(Clearance.class)
	void takesTheStricterOfTwo(Clearance clearance) {
		assertThat(clearance.stricterOf(Clearance.REFER)).isEqualTo(Clearance.REFER);
		assertThat(Clearance.REFER.stricterOf(clearance)).isEqualTo(Clearance.REFER);
		assertThat(clearance.stricterOf(Clearance.FULL_TRAINING)).isEqualTo(clearance);
		assertThat(Clearance.FULL_TRAINING.stricterOf(clearance)).isEqualTo(clearance);
		assertThat(clearance.stricterOf(clearance)).isEqualTo(clearance);
	}

	/** Order: Refer, Rest, Not assessed, Easy only, Full training. */
	@Test
	void isInTheOrderOfTheDecisionText() {
		assertThat(Clearance.values()).containsExactly(Clearance.REFER, Clearance.REST, Clearance.NOT_ASSESSED,
				Clearance.EASY_ONLY, Clearance.FULL_TRAINING);
	}

}
