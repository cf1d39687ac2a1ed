package org.fallow.board.web;

import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.jspecify.annotations.Nullable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

	/** Worked out by hand: exp(4.0 - 0.1) is 49.4. */
	@Test
	void saysTheMeanAndTheValueBelowWhichItActs() {
		RuleSet.Hrv rules = DefaultRules.ruleSet().hrv();
		assertThat(Charts.rmssdWords(Math.log(52), 4.0, 0.1, rules)).satisfies((words) -> {
			assertThat(words.code()).isEqualTo("chart.rmssd.mean");
			assertThat(words.arguments().get(0)).isEqualTo(7);
			assertThat((double) words.arguments().get(1)).isEqualTo(49.4, within(0.01));
			assertThat((double) words.arguments().get(2)).isEqualTo(52, within(0.01));
		});
		assertThat(Charts.rmssdWords(null, 4.0, 0.1, rules).code()).isEqualTo("chart.rmssd.no-mean");
		assertThat(Charts.rmssdWords(null, null, null, rules).code()).isEqualTo("chart.rmssd.no-baseline");
	}

}
