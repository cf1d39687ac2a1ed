package org.fallow.rules;

import java.util.List;

import org.fallow.wording.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Rule sets a coach could have adopted that were looser than ours, though each number
 * stood at or beyond its stricter bound.
 */
class SecondBoundsReviewTest {

	/** Each takes an athlete's baseline away, and with it every flag it would raise. */
	@ParameterizedTest
	@CsvSource({ "/baseline/provisionalFrom, 10", "/baseline/fallbackDays, 42", "/baseline/marginDays, 7",
			"/baseline/marginDays, 2" })
	void refusesFewerBaselines(String pointer, String value) {
		assertThat(RuleBounds.check(RuleBoundsTest.changed(pointer, value))).extracting(Problem::field)
			.contains(pointer);
	}

	/** Twenty readings in four weeks would give way to the latest fourteen alone. */
	@Test
	void refusesToFallBackToFewerReadingsThanTheWindowHas() {
		assertThat(RuleBounds.check(RuleBoundsTest.changed("/baseline/fewReadings", "28"))).containsExactly(Problem
			.of("/baseline/fewReadings", "rules.combination.at-most", "28", "/baseline/fallbackReadings", "14"));
	}

	/** In the third of five stages easy running, in the third of three full training. */
	@Test
	void refusesALaterPathWithFewerStages() {
		RuleSet rules = RuleBoundsTest.with(PathName.THREE_WEEK, Protocol.SALMAN_2021);
		RuleSet.Path ours = rules.path(PathName.LONG);
		List<RuleSet.Stage> stages = ours.stages();
		RuleSet longer = rules.with(new RuleSet.Path(PathName.LONG, 60, false, 7, false, stages, null));
		assertThat(longer.path(PathName.LONG).daysToLastStage())
			.isGreaterThan(longer.path(PathName.THREE_WEEK).daysToLastStage());
		assertThat(RuleBounds.check(longer)).extracting(Problem::field).containsExactly("/paths/4");
	}

}
