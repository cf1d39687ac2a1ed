package org.fallow.rules;

import java.util.ArrayList;
import java.util.List;

import org.fallow.rules.RuleSet.Path;
import org.fallow.rules.RuleSet.Stage;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

/**
 * What a refused rule set is told, word by word: which number, what it is, what it may
 * be. And what a coach may add to a stage that the protocol leaves open.
 */
class BoundsTest {

	private static final RuleSet OURS = DefaultRules.ruleSet();

	/** The watched stage of the three-week path: no ceiling of any kind. */
	private static final String WATCHED = "/paths/3/stages/2";

	private static List<Problem> check(String pointer, String value) {
		return RuleBounds.check(RuleBoundsTest.changed(pointer, value));
	}

	private static List<Problem> check(String one, String value, String other, String otherValue) {
		RuleTree tree = RuleTree.of(OURS);
		tree.set(one, value);
		tree.set(other, otherValue);
		return RuleBounds.check(tree.rules());
	}

	@Test
	void namesTheBoundOnTheSideItIsLooserOn() {
		assertThat(check("/line/margin", "1.6"))
			.containsExactly(Problem.of("/line/margin", "rules.bound.looser-high", "1.6", "1.5"));
		assertThat(check("/gates/untrackedMornings", "3"))
			.containsExactly(Problem.of("/gates/untrackedMornings", "rules.bound.looser-low", "3", "4"));
		assertThat(check("/line/margin", "0.1"))
			.containsExactly(Problem.of("/line/margin", "rules.bound.beyond", "0.1", "0.5", "1.5"));
		assertThat(check("/gates/badFreeMornings", "2"))
			.containsExactly(Problem.of("/gates/badFreeMornings", "rules.bound.fixed", "2", "3"));
	}

	@ParameterizedTest
	@CsvSource({ "/baseline/fewReadings, 29, /baseline/windowDays, 28",
			"/baseline/fewReadings, 20, /baseline/fallbackReadings, 19",
			"/baseline/provisionalFrom, 15, /baseline/establishedFrom, 14",
			"/flags/highFloor, 10, /flags/highCeiling, 9", "/line/endsBelow, 4, /line/floor, 3",
			"/line/pairFloor, 4, /line/floor, 3", "/flags/askFloor, 5, /flags/askCeiling, 4",
			"/opening/coldMornings, 8, /opening/coldWithinDays, 7",
			"/workingLevel/shutMornings, 22, /workingLevel/ofMornings, 21",
			"/limits/shortDays, 6, /limits/illDays, 5" })
	void refusesMoreThanTheOtherNumberAllows(String pointer, String value, String other, String most) {
		assertThat(check(pointer, value, other, most))
			.contains(Problem.of(pointer, "rules.combination.at-most", value, other, most));
		assertThat(check(pointer, most, other, most)).as("as much is allowed")
			.noneMatch((problem) -> problem.field().equals(pointer) && problem.message().arguments().contains(other));
	}

	@ParameterizedTest
	@CsvSource({ "/line/ceiling, /flags/highFloor, 8, 9", "/flags/highCeiling, /flags/veryHigh, 14, 15" })
	void refusesAsMuchAsTheNumberItMustStayBelow(String pointer, String other, String value, String above) {
		assertThat(check(pointer, value, other, value))
			.contains(Problem.of(pointer, "rules.combination.below", value, other, value));
		assertThat(check(pointer, value, other, above)).isEmpty();
	}

	@Test
	void refusesMinutesOfMoreFirstRunsThanTheDefinitionHas() {
		Stage first = OURS.path(PathName.THREE_WEEK).stages().get(0);
		RuleSet rules = withStage(0,
				new Stage(first.days(), first.clearance(), first.runs(), first.effortCeiling(),
						first.heartRateCeiling(), first.highest(), first.volumeShare(), first.longRunShare(),
						first.longRunMinutes(), List.of(30, 60), null));
		assertThat(RuleBounds.check(rules))
			.containsExactly(Problem.of("/paths/3/stages/0/firstRunMinutes", "rules.stage.first-runs"));
	}

	@ParameterizedTest
	@CsvSource({ "1", "10", "4.5" })
	void letsACoachAddAnEffortCeiling(double effort) {
		assertThat(RuleBounds.check(watched(effort, null, null, null))).isEmpty();
	}

	@ParameterizedTest
	@CsvSource({ "0.9", "10.1" })
	void refusesAnEffortNobodyCanRate(double effort) {
		assertThat(RuleBounds.check(watched(effort, null, null, null))).containsExactly(
				Problem.of(WATCHED + "/effortCeiling", "rules.bound.beyond", RuleTree.text(effort), "1", "10"));
	}

	@Test
	void letsACoachAddAHeartRateOrMinutesWithinReason() {
		assertThat(RuleBounds.check(watched(null, 0.5, 5, null))).isEmpty();
		assertThat(RuleBounds.check(watched(null, 1.0, 600, null))).isEmpty();
		assertThat(RuleBounds.check(watched(null, 1.01, 601, null))).containsExactly(
				Problem.of(WATCHED + "/heartRateCeiling", "rules.bound.beyond", "1.01", "0.5", "1"),
				Problem.of(WATCHED + "/longRunMinutes", "rules.bound.beyond", "601", "5", "600"));
		assertThat(RuleBounds.check(watched(null, 0.49, 4, null))).hasSize(2);
	}

	/** Both scales must say the same: 13 is somewhat hard, and so is 4 of 10. */
	@Test
	void asksForAnEffortThatAgreesWithTheExertion() {
		assertThat(RuleBounds.check(watched(4.0, null, null, 13))).isEmpty();
		assertThat(RuleBounds.check(watched(4.5, null, null, 13)))
			.containsExactly(Problem.of(WATCHED + "/effortCeiling", "rules.stage.borg", 13, "4"));
		assertThat(RuleBounds.check(watched(null, null, null, 13)))
			.containsExactly(Problem.of(WATCHED + "/effortCeiling", "rules.stage.borg", 13, "4"));
	}

	@ParameterizedTest
	@CsvSource({ "6, 1", "20, 7" })
	void takesBothEndsOfTheScale(int borg, double effort) {
		assertThat(RuleBounds.check(watched(effort, null, null, borg))).isEmpty();
		assertThat(RuleBounds.check(watched(effort + 0.5, null, null, borg))).extracting(Problem::field)
			.containsExactly(WATCHED + "/effortCeiling");
	}

	@ParameterizedTest
	@CsvSource({ "5", "21" })
	void refusesARatingThatIsNotOnTheScale(int borg) {
		assertThat(RuleBounds.check(watched(null, null, null, borg))).containsExactly(
				Problem.of(WATCHED + "/borgCeiling", "rules.bound.beyond", String.valueOf(borg), "6", "20"));
	}

	/** From the table of paths: ill at least, Stage 1, 2, and 3 watched. */
	@ParameterizedTest
	@CsvSource({ "SHORT, 5, 8", "STOMACH, 6, 9", "THREE_WEEK, 16, 23", "LONG, 24, 38" })
	void takesAtLeastTheDaysOfItsTable(PathName name, int toLastStage, int toClose) {
		assertThat(OURS.path(name).daysToLastStage()).isEqualTo(toLastStage);
		assertThat(OURS.path(name).daysToClose()).isEqualTo(toClose);
	}

	/** As long to full training, but watched for less. */
	@Test
	void refusesALaterPathThatIsWatchedForLess() {
		Path week = OURS.path(PathName.THREE_WEEK);
		List<Stage> stages = new ArrayList<>(week.stages());
		stages.set(2, days(stages.get(2), 40));
		RuleSet rules = OURS
			.with(new Path(week.name(), week.illDays(), false, week.symptomFreeMornings(), false, stages, null));
		assertThat(RuleBounds.check(rules))
			.containsExactly(Problem.of("/paths/4", "rules.path.shorter", "LONG", "THREE_WEEK"));
	}

	@Test
	void readsNoRuleSetWithoutAGroupOfNumbers() {
		assertThatNullPointerException()
			.isThrownBy(() -> new RuleSet(OURS.baseline(), OURS.flags(), null, OURS.hrv(), OURS.opening(), OURS.gates(),
					OURS.limits(), OURS.workingLevel(), OURS.advice(), OURS.slips(), OURS.words(), OURS.told(),
					OURS.paths()))
			.withMessageContaining("group of numbers");
	}

	private static Stage days(Stage stage, int days) {
		return new Stage(days, stage.clearance(), stage.runs(), stage.effortCeiling(), stage.heartRateCeiling(),
				stage.highest(), stage.volumeShare(), stage.longRunShare(), stage.longRunMinutes(),
				stage.firstRunMinutes(), stage.borgCeiling());
	}

	private static RuleSet watched(@Nullable Double effort, @Nullable Double heartRate, @Nullable Integer minutes,
			@Nullable Integer borg) {
		Stage stage = OURS.path(PathName.THREE_WEEK).stages().get(2);
		return withStage(2,
				new Stage(stage.days(), stage.clearance(), 0, effort, heartRate, null, 1, 1, minutes, List.of(), borg));
	}

	private static RuleSet withStage(int index, Stage stage) {
		Path path = OURS.path(PathName.THREE_WEEK);
		List<Stage> stages = new ArrayList<>(path.stages());
		stages.set(index, stage);
		return OURS.with(new Path(path.name(), path.illDays(), false, path.symptomFreeMornings(), false, stages, null));
	}

}
