package org.fallow.rules;

import java.util.List;

import org.fallow.wording.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class RuleBoundsTest {

	private static final RuleSet OURS = DefaultRules.ruleSet();

	@Test
	void findsNothingWrongWithTheDefault() {
		assertThat(RuleBounds.check(OURS)).isEmpty();
	}

	@ParameterizedTest
	@EnumSource(Protocol.class)
	void takesEachPublishedPathForLongIllnesses(Protocol protocol) {
		assertThat(RuleBounds.check(with(PathName.LONG, protocol))).isEmpty();
	}

	@Test
	void takesAPublishedPathForThreeWeeksToo() {
		RuleSet both = with(with(OURS, PathName.LONG, Protocol.SALMAN_2021), PathName.THREE_WEEK, Protocol.SALMAN_2021);
		assertThat(RuleBounds.check(both)).isEmpty();
	}

	/** Six days from the first stage to full training, where ours takes fourteen. */
	@Test
	void keepsElliottToTheLongPath() {
		assertThat(RuleBounds.check(with(PathName.THREE_WEEK, Protocol.ELLIOTT_2020))).extracting(Problem::field)
			.contains("/paths/3/protocol");
	}

	@Test
	void refusesALaterPathThatIsShorterThanAnEarlierOne() {
		assertThat(RuleBounds.check(with(PathName.THREE_WEEK, Protocol.SALMAN_2021)))
			.containsExactly(Problem.of("/paths/4", "rules.path.shorter", "LONG", "THREE_WEEK"));
	}

	@Test
	void keepsPublishedPathsToTheTwoLongerOnes() {
		assertThat(RuleBounds.check(with(PathName.SHORT, Protocol.ELLIOTT_2020))).extracting(Problem::field)
			.contains("/paths/1/protocol");
	}

	@ParameterizedTest
	@CsvSource({ "/line/floor, 4.5", "/flags/veryHigh, 20.5", "/opening/feverCelsius, 38.1",
			"/gates/untrackedMornings, 3", "/paths/1/illDays, 0", "/paths/1/symptomFreeMornings, 0",
			"/paths/3/symptomFreeMornings, 1", "/paths/3/stages/0/days, 6", "/paths/3/stages/2/days, 6",
			"/paths/4/illDays, 9", "/paths/4/symptomFreeMornings, 6", "/paths/3/stages/0/effortCeiling, 3.5",
			"/paths/3/stages/0/heartRateCeiling, 0.8", "/paths/3/stages/0/runs, 2",
			"/paths/4/stages/0/firstRunMinutes/0, 16", "/limits/feverDays, 4", "/limits/illDays, 11",
			"/line/ceiling, 8.5", "/line/margin, 2", "/line/apartDays, 2", "/hrv/suppressedSds, 1.5" })
	void refusesALooserValue(String pointer, String value) {
		assertThat(RuleBounds.check(changed(pointer, value))).anySatisfy((problem) -> {
			assertThat(problem.field()).isEqualTo(pointer);
			assertThat(problem.message().code()).startsWith("rules.bound.looser-");
			assertThat(problem.message().arguments()).element(0).isEqualTo(value);
		});
	}

	@ParameterizedTest
	@CsvSource({ "/line/margin, 1", "/opening/feverCelsius, 37.8", "/gates/untrackedMornings, 7", "/paths/3/illDays, 4",
			"/paths/4/stages/2/days, 28", "/paths/3/stages/0/effortCeiling, 2", "/limits/feverDays, 2",
			"/gates/sessionDays, 7" })
	void allowsAStricterValue(String pointer, String value) {
		assertThat(RuleBounds.check(changed(pointer, value))).isEmpty();
	}

	@ParameterizedTest
	@CsvSource({ "/paths/3/illDays, 300, rules.bound.beyond", "/opening/feverCelsius, 20, rules.bound.beyond",
			"/line/floor, 0, rules.bound.beyond", "/line/floor, -3, rules.bound.beyond",
			"/line/days, 30, rules.bound.fixed", "/paths/3/stages/2/effortCeiling, 11, rules.bound.beyond" })
	void refusesWhatNobodyCanMean(String pointer, String value, String code) {
		assertThat(RuleBounds.check(changed(pointer, value))).extracting((problem) -> problem.message().code())
			.contains(code);
	}

	@ParameterizedTest
	@CsvSource({ "/line/floor, 4, /line/ceiling, 3", "/flags/highFloor, 7, /line/ceiling, 8",
			"/flags/highCeiling, 8, /flags/highFloor, 10", "/flags/veryHigh, 12, /flags/highCeiling, 15",
			"/baseline/windowDays, 42, /baseline/fallbackDays, 41" })
	void refusesCombinationsThatMakeNoSense(String one, String value, String other, String otherValue) {
		RuleTree tree = RuleTree.of(OURS);
		tree.set(one, value);
		tree.set(other, otherValue);
		assertThat(RuleBounds.check(tree.rules())).extracting((problem) -> problem.message().code())
			.anyMatch((code) -> code.startsWith("rules.combination."));
	}

	@Test
	void refusesAProvisionalBaselineThatNeedsMoreThanAnEstablishedOne() {
		RuleTree tree = RuleTree.of(OURS);
		tree.set("/baseline/provisionalFrom", "20");
		assertThat(RuleBounds.check(tree.rules())).contains(Problem.of("/baseline/provisionalFrom",
				"rules.combination.at-most", "20", "/baseline/establishedFrom", "14"));
	}

	@Test
	void refusesAStageThatIsLooserThanItsDefinition() {
		RuleSet.Path path = OURS.path(PathName.LONG);
		RuleSet.Stage last = path.stages().get(2);
		RuleSet rules = with(OURS, new RuleSet.Path(path.name(), path.illDays(), false, path.symptomFreeMornings(),
				false, List.of(last, path.stages().get(1), last), null));
		assertThat(RuleBounds.check(rules)).extracting(Problem::field)
			.contains("/paths/4/stages/0/clearance", "/paths/4/stages/0/highest", "/paths/4/stages/0/effortCeiling",
					"/paths/4/stages/0/heartRateCeiling", "/paths/4/stages/0/firstRunMinutes/0");
	}

	@Test
	void refusesAStageLeftOut() {
		RuleSet.Path path = OURS.path(PathName.LONG);
		RuleSet rules = with(OURS, new RuleSet.Path(path.name(), path.illDays(), false, path.symptomFreeMornings(),
				false, path.stages().subList(1, 3), null));
		assertThat(RuleBounds.check(rules)).contains(Problem.of("/paths/4/stages", "rules.path.stages", 2, 3));
	}

	@Test
	void refusesAStomachPathThatDoesNotAskForEating() {
		RuleSet.Path path = OURS.path(PathName.STOMACH);
		RuleSet rules = with(OURS, new RuleSet.Path(path.name(), path.illDays(), false, path.symptomFreeMornings(),
				false, path.stages(), null));
		assertThat(RuleBounds.check(rules)).extracting(Problem::field)
			.containsExactly("/paths/2/fromLastSymptom", "/paths/2/eating");
	}

	@ParameterizedTest
	@CsvSource(delimiter = ';',
			value = { "\"floor\":\"4\"; \"floor\":\"three\"", "\"floor\":\"4\"; \"floor\":\"NaN\"",
					"\"floor\":\"4\"; \"floor\":null", "\"floor\":\"4\"; \"flor\":\"4\"",
					"\"windowDays\":28; \"windowDays\":28.7", "\"windowDays\":28; \"windowDays\":\"many\"",
					"\"clearance\":\"EASY_ONLY\"; \"clearance\":null",
					"\"clearance\":\"EASY_ONLY\"; \"clearance\":\"ANYTHING\"", "\"flags\":{; \"flogs\":{" })
	void readsNoRuleSetWithAnUnknownMemberOrNoNumber(String ours, String theirs) {
		String json = RuleJson.canonical(OURS);
		assertThat(json).contains(ours);
		assertThatIllegalArgumentException().isThrownBy(() -> RuleJson.parse(json.replace(ours, theirs)))
			.withMessageStartingWith("not a rule set");
	}

	@ParameterizedTest
	@CsvSource(delimiter = ';', value = { "null", "[]", "{}", "nothing of the sort", "''" })
	void readsNothingElse(String json) {
		assertThatIllegalArgumentException().isThrownBy(() -> RuleJson.parse(json));
	}

	@Test
	void readsTextsFromBeforeProtocolsWereNamed() {
		String json = RuleJson.canonical(OURS);
		assertThat(json).doesNotContain("protocol", "borgCeiling");
		assertThat(RuleJson.canonical(RuleJson.parse(json))).isEqualTo(json);
	}

	@Test
	void readsAndWritesPublishedPaths() {
		RuleSet rules = with(PathName.LONG, Protocol.SALMAN_2021);
		assertThat(RuleJson.parse(RuleJson.canonical(rules))).isEqualTo(rules);
		assertThat(RuleHash.of(rules)).isNotEqualTo(RuleHash.of(OURS));
	}

	static RuleSet changed(String pointer, String value) {
		RuleTree tree = RuleTree.of(OURS);
		if (pointer.endsWith("/stages/2/effortCeiling")) {
			RuleSet.Path path = OURS.path(PathName.THREE_WEEK);
			RuleSet.Stage stage = path.stages().get(2);
			return with(OURS, new RuleSet.Path(path.name(), path.illDays(), false, path.symptomFreeMornings(), false,
					List.of(path.stages().get(0), path.stages().get(1), new RuleSet.Stage(stage.days(),
							stage.clearance(), 0, Double.valueOf(value), null, null, 1, 1, null, List.of(), null)),
					null));
		}
		tree.set(pointer, value);
		return tree.rules();
	}

	static RuleSet with(PathName name, Protocol protocol) {
		return with(OURS, name, protocol);
	}

	static RuleSet with(RuleSet rules, PathName name, Protocol protocol) {
		return with(rules, PublishedPaths.of(protocol, name));
	}

	static RuleSet with(RuleSet rules, RuleSet.Path path) {
		return rules.with(path);
	}

}
