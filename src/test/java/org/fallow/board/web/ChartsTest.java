package org.fallow.board.web;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.jspecify.annotations.Nullable;

import static org.assertj.core.api.Assertions.assertThat;

class ChartsTest {

	@ParameterizedTest
	@CsvSource({ "4, 4", "52, 52", "5, 12", "all, 12", ", 12", "-4, 12" })
	void looksAtFourWeeksToAYear(@Nullable String asked, int weeks) {
		assertThat(Charts.weeks(asked)).isEqualTo(weeks);
	}

	@Test
	void offersFromFourWeeksToAYear() {
		assertThat(Charts.WEEKS).first().isEqualTo(4);
		assertThat(Charts.WEEKS).last().isEqualTo(52);
	}

}
