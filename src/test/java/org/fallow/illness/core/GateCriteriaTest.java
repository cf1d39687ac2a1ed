package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import org.fallow.entry.Activity;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.fallow.entry.AfterSession;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

/**
 * The criteria of each gate, all of them, and the earliest day each could be met. Fatigue
 * on days 0 and 1; Stage 1 on day 3, Stage 2 on day 10, Stage 3 on day 17.
 */
class GateCriteriaTest {

	private static final RuleSet OURS = DefaultRules.ruleSet();

	private static Story threeWeeks() {
		return Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
	}

	private static List<String> codes(GateSheet sheet) {
		return sheet.criteria().stream().map(Criterion::code).toList();
	}

	private static Map<String, LocalDate> earliest(GateSheet sheet) {
		Map<String, LocalDate> days = new LinkedHashMap<>();
		sheet.criteria().forEach((c) -> days.put(c.code(), c.earliest()));
		return days;
	}

	@Test
	void asksForEightThingsBeforeStage1() {
		GateSheet sheet = threeWeeks().on(1).gate();
		assertThat(codes(sheet)).containsExactly("entered", "no-hold", "symptom-free", "no-fever", "least-days",
				"quiet", "hrv", "feels-able");
		assertThat(List.of(sheet.from(), sheet.to())).containsExactly(0, 1);
		assertThat(sheet.closes()).isFalse();
	}

	@Test
	void asksForEatingToo() {
		Story stomach = Story.ofAKnownAthlete().sick(0, Symptom.VOMITING, Severity.MILD);
		assertThat(codes(stomach.on(0).gate())).last().isEqualTo("eating");
		assertThat(stomach.criterion(0, "eating").state()).isEqualTo(CriterionState.MET);
		Story unasked = stomach.morning(1, (e) -> e.eating(null));
		assertThat(unasked.criterion(1, "eating").state()).isEqualTo(CriterionState.NOT_AVAILABLE);
		assertThat(unasked.criterion(1, "eating").shuts()).isTrue();
	}

	@Test
	void asksForEightThingsUpAStage() {
		GateSheet sheet = threeWeeks().well(2, 4).on(4).gate();
		assertThat(codes(sheet)).containsExactly("entered", "no-hold", "counted", "good-morning", "no-bad-morning",
				"runs", "after-session", "effort");
		assertThat(List.of(sheet.from(), sheet.to())).containsExactly(1, 2);
	}

	@Test
	void asksForDaysAndAGoodMorningToClose() {
		GateSheet sheet = threeWeeks().well(2, 18).runs(3, 16).on(18).gate();
		assertThat(codes(sheet)).containsExactly("entered", "no-hold", "counted", "good-morning");
		assertThat(List.of(sheet.from(), sheet.to())).containsExactly(3, 4);
		assertThat(sheet.closes()).isTrue();
	}

	@Test
	void saysWhatWasSeenAndWhatIsAsked() {
		Story story = threeWeeks().rhr(2, 54).rhr(3, 54);
		assertThat(story.criterion(3, "quiet").observed()).containsExactly("4.0");
		assertThat(story.criterion(3, "quiet").required()).containsExactly("4.0");
		Story runs = threeWeeks().well(2, 5).run(3, 4);
		assertThat(runs.criterion(5, "effort").observed()).containsExactly("0");
		assertThat(runs.criterion(5, "effort").required()).containsExactly("3.0");
		assertThat(runs.criterion(5, "runs").observed()).containsExactly("2");
	}

	@Test
	void namesTheEarliestDayOfEachCriterion() {
		LocalDate today = Story.day(1);
		assertThat(earliest(threeWeeks().on(1).gate())).containsExactly(entry("entered", today),
				entry("no-hold", today), entry("symptom-free", Story.day(3)), entry("no-fever", today),
				entry("least-days", Story.day(2)), entry("quiet", today), entry("hrv", today),
				entry("feels-able", today));
	}

	@Test
	void namesTheNextMorningForWhatOneGoodMorningMends() {
		Story story = threeWeeks().morning(2, (e) -> e.rhr(62.0).feels(null));
		assertThat(earliest(story.on(2).gate())).containsEntry("quiet", Story.day(3))
			.containsEntry("feels-able", Story.day(3))
			.containsEntry("symptom-free", Story.day(3))
			.containsEntry("least-days", Story.day(2));
		assertThat(earliest(story.on(3).gate())).as("without an entry").containsEntry("entered", Story.day(4));
	}

	@Test
	void namesTheDayAfterTomorrowForFeverOfThisMorning() {
		Story story = Story.ofAKnownAthlete().morning(0, Story.Entry::fever).well(1);
		assertThat(earliest(story.on(0).gate())).containsEntry("no-fever", Story.day(2));
		assertThat(earliest(story.on(1).gate())).containsEntry("no-fever", Story.day(2));
	}

	/** On the three-week path it is asked only of who does not eat normally. */
	@Test
	void namesTheNextMorningForWhatIsThenAskedNoLonger() {
		Story story = threeWeeks().morning(2, (e) -> e.eating(false));
		assertThat(story.criterion(2, "eating").shuts()).isTrue();
		assertThat(earliest(story.on(2).gate())).containsEntry("eating", Story.day(3));
	}

	@Test
	void takesLoggedRunsIntoTheEarliestDay() {
		Story story = threeWeeks().well(2, 8).run(4, 5, 6);
		assertThat(earliest(story.on(8).gate())).containsEntry("runs", Story.day(8))
			.containsEntry("counted", Story.day(10));
		assertThat(story.on(8).gate().earliest()).isEqualTo(Story.day(10));
		Story two = threeWeeks().well(2, 8).run(4, 5);
		assertThat(earliest(two.on(8).gate())).containsEntry("runs", Story.day(9));
	}

	/** No intensity is cleared by us during an injury: three runs from day 31 on. */
	@Test
	void assumesNoRunDuringAnInjury() {
		Story story = threeWeeks().well(2, 8).injured(5, 30);
		assertThat(earliest(story.on(8).gate())).containsEntry("counted", Story.day(10))
			.containsEntry("runs", Story.day(34));
	}

	@Test
	void foreseesTheGateUnderAClearance() {
		Story story = Story.ofAKnownAthlete().hold(0).well(0, 1).cleared(1, null, Clearance.EASY_ONLY);
		assertThat(story.on(1).gate().earliest()).isEqualTo(Story.day(2));
		assertThat(story.well(2).stage(2)).isEqualTo(1);
	}

	@Test
	void foreseesNoGateAfterTheClearanceEnds() {
		Story story = Story.ofAKnownAthlete().hold(0).well(0, 3).cleared(1, 5, Clearance.FULL_TRAINING);
		assertThat(story.stage(3)).isEqualTo(1);
		assertThat(story.on(3).gate().earliest()).as("the hold stands again on day 6").isNull();
		assertThat(earliest(story.on(3).gate())).containsEntry("no-hold", Story.day(3))
			.containsEntry("runs", Story.day(6));
	}

	@Test
	void saysSinceWhenFromTheDayTheEpisodeOpened() {
		Story story = threeWeeks().well(2);
		assertThat(story.criterion(2, "no-hold").since()).isEqualTo(Story.day(0));
		assertThat(story.criterion(2, "least-days").since()).isEqualTo(Story.day(2));
	}

	/**
	 * A session logged after the entry opens nothing that day; this one was not after.
	 */
	@Test
	void countsASessionRecordedTogetherWithTheEntry() {
		Story story = threeWeeks().well(2, 9).run(4, 6);
		Recorded both = story.recorded(10, 6);
		MorningEntry morning = new Story.Entry().at(10, both);
		story.add(morning);
		story.add(
				new SessionLog("s", Story.day(9), both, Activity.RUN, 30, 3.0, Intensity.EASY, List.of(), false, null));
		assertThat(story.criterion(10, "runs").observed()).containsExactly("3");
		assertThat(story.stage(10)).isEqualTo(2);
	}

	/** Stages are data: here a fourth one, and no ceiling in the third. */
	@Test
	void asksForNoEffortWhereAStageHasNoCeiling() {
		RuleSet.Path path = OURS.path(PathName.THREE_WEEK);
		List<RuleSet.Stage> three = path.stages();
		RuleSet four = OURS.with(new RuleSet.Path(path.name(), path.illDays(), false, path.symptomFreeMornings(), false,
				List.of(three.get(0), three.get(1), three.get(2), three.get(2)), null));
		Story story = threeWeeks().well(2, 25).runs(3, 16).session(18, 9.0, Intensity.RACE_PACE);
		List<DayAssessment> days = Course.of(story.timeline(), RuleBook.of(four), Story.day(24));
		GateSheet opened = Objects.requireNonNull(days.get(days.size() - 1).opened());
		assertThat(codes(opened)).containsExactly("entered", "no-hold", "counted", "good-morning", "no-bad-morning",
				"runs", "after-session", "effort");
		assertThat(opened.criteria().get(7).state()).isEqualTo(CriterionState.NOT_APPLICABLE);
		assertThat(opened.criteria().get(7).shuts()).isFalse();
		assertThat(List.of(opened.from(), opened.to())).containsExactly(3, 4);
	}

	@Test
	void countsTheDayInTheStageFromOne() {
		Story story = threeWeeks().well(2, 9);
		assertThat(story.on(0).dayInStage()).isEqualTo(1);
		assertThat(story.on(2).dayInStage()).isEqualTo(3);
		assertThat(story.on(3).dayInStage()).as("Stage 1").isEqualTo(1);
		assertThat(story.on(9).dayInStage()).isEqualTo(7);
		assertThat(Story.ofAKnownAthlete().well(0).on(0).dayInStage()).isZero();
	}

	/** A run logged after the morning's entry is neither counted nor called missing. */
	@Test
	void saysWhatWaitsForTheNextMorning() {
		Story story = threeWeeks().well(2, 5).run(4).session(5, 8.0, Intensity.EASY, AfterSession.HEADACHE);
		String next = Story.day(6).toString();
		assertThat(story.criterion(5, "runs").observed()).containsExactly("1", "1", next);
		assertThat(story.criterion(5, "after-session").observed()).containsExactly("0", "1", next);
		assertThat(story.criterion(5, "effort").observed()).containsExactly("0", "1", next);
		story.well(6);
		assertThat(story.criterion(6, "runs").observed()).containsExactly("2");
		assertThat(story.criterion(6, "after-session").observed()).containsExactly("1");
		assertThat(story.criterion(6, "effort").observed()).containsExactly("1");
	}

}
