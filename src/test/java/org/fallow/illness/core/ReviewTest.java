package org.fallow.illness.core;

import java.util.List;
import java.util.Objects;

import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleBook;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.fallow.rules.Clearance.EASY_ONLY;
import static org.fallow.rules.Clearance.REST;

/**
 * Days found by reading the decision text against the core, each expected as the text
 * says.
 */
class ReviewTest {

	private static final RuleBook BOOK = RuleBook.of(DefaultRules.ruleSet());

	private static Story threeWeeks() {
		return Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
	}

	private static Story inStage1() {
		return threeWeeks().well(2, 3);
	}

	/** A cold on days 0 to 2: Stage 1 of the short path on day 3. */
	private static Story aCold() {
		return Story.ofAKnownAthlete().sick(0, 2, Symptom.SNEEZING, Severity.MILD).well(3);
	}

	private static Story closedOnDay24() {
		return threeWeeks().well(2, 25).runs(3, 20);
	}

	@Test
	void opensNoGateTheMorningAfterAFeverReport() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, Severity.MODERATE).well(1, 2);
		assertThat(story.report(1, 1, ReportKind.FEVER, null).stage(2)).isZero();
	}

	@Test
	void goesLongForThreeDaysOfFeverInARelapse() {
		Story story = aCold();
		for (int day = 4; day <= 7; day++) {
			story.morning(day, Story.Entry::fever);
		}
		assertThat(story.episode(3).path()).isEqualTo(PathName.SHORT);
		assertThat(story.episode(7).path()).isEqualTo(PathName.LONG);
	}

	@Test
	void goesLongForACovidReportWithAnEarlierOnset() {
		Story story = aCold().well(4).report(4, -1, ReportKind.COVID, 8);
		assertThat(story.episode(4).path()).isEqualTo(PathName.LONG);
	}

	@Test
	void answersTheSameToAReportedAndATickedColdInStage1() {
		Story ticked = inStage1().sick(4, Symptom.SNEEZING, Severity.MILD);
		Story reported = inStage1().well(4).report(4, 4, ReportKind.ABOVE_NECK, 2);
		assertThat(ticked.stage(4)).isZero();
		assertThat(reported.stage(4)).isZero();
		assertThat(reported.clearance(4)).isEqualTo(ticked.clearance(4)).isEqualTo(REST);
	}

	@Test
	void keepsHoldingBackWhenTheReadingIsLeftOutAfterASecondLowMorning() {
		Story story = Story.ofAKnownAthlete().rhr(0, 40).rhr(1, 40).withoutRhr(2);
		assertThat(story.clearance(1)).isEqualTo(EASY_ONLY);
		assertThat(story.clearance(2)).isEqualTo(EASY_ONLY);
	}

	@Test
	void holdsBackANewcomerWhoLeavesTheReadingOutOnceThereIsABaseline() {
		Story story = Story.ofANewcomer().well(0, 6);
		for (int day = 7; day <= 12; day++) {
			story.withoutRhr(day);
		}
		assertThat(story.on(12).rhr().baseline()).isNotNull();
		assertThat(story.clearance(12)).isEqualTo(EASY_ONLY);
	}

	@Test
	void staysOpenWhenTheThirdColdMorningIsCorrectedOnItsDay() {
		Story story = Story.ofAKnownAthlete().sick(0, 2, Symptom.SNEEZING, Severity.MILD);
		assertThat(story.stage(2)).isZero();
		assertThat(story.late(2, 2, (e) -> e).stage(2)).isZero();
	}

	@Test
	void opensLateForTheThirdColdMorningThatComesInAfterAWellOne() {
		Story story = Story.ofAKnownAthlete().sick(0, 1, Symptom.SNEEZING, Severity.MILD).well(3);
		assertThat(story.late(2, 3, (e) -> e.symptom(Symptom.SNEEZING, Severity.MILD)).stage(3)).isZero();
	}

	@Test
	void movesTheOnsetOfAColdToAnEarlierColdMorningThatComesInLate() {
		Story story = Story.ofAKnownAthlete().sick(0, 6, Symptom.SNEEZING, Severity.MILD);
		story.late(-1, 6, (e) -> e.symptom(Symptom.SNEEZING, Severity.MILD));
		assertThat(story.episode(6).firstOnset()).isEqualTo(Story.day(-1));
		assertThat(story.episode(6).path()).as("eight days").isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void restsForAVeryHighReadingOfTheHeldSeriesUnderSymptomsOnly() {
		assertThat(inStage1().symptomsOnly(4).rhr(4, 75).clearance(4)).isEqualTo(REST);
	}

	@Test
	void takesALateSickMorningOutOfTheBaselineHeldAfterTheClose() {
		Story story = closedOnDay24();
		assertThat(story.on(25).rhr().n()).isEqualTo(25);
		assertThat(story.late(-10, 25, (e) -> e.symptom(Symptom.SNEEZING, Severity.MILD)).on(25).rhr().n())
			.isEqualTo(24);
	}

	@Test
	void holdsNoBaselineOfDaysFromItsOwnOnsetOn() {
		Story story = closedOnDay24().late(-10, 25, (e) -> e.symptom(Symptom.FATIGUE, Severity.MODERATE));
		Episode episode = story.episode(25);
		assertThat(episode.firstOnset()).isEqualTo(Story.day(-10));
		assertThat(Objects.requireNonNull(episode.held().rhr()).n()).as("days -28 to -14").isEqualTo(15);
	}

	@Test
	void assumesNoRunOnADayOfRestForTheEarliestDay() {
		Story story = inStage1().well(4, 8).rhr(9, 62);
		assertThat(story.clearance(9)).isEqualTo(REST);
		assertThat(story.on(9).gate().earliest()).as("runs on 10, 11 and 12").isEqualTo(Story.day(13));
	}

	@Test
	void goesOnTheSameFromTheFactsOfTheLastTwoHundredDaysAfterALongSilence() {
		Story story = Story.ofAKnownAthlete().withoutRhr(230);
		List<DayAssessment> whole = story.lived(230);
		State state = whole.get(whole.size() - 2).state();
		List<Fact> recent = story.timeline()
			.facts()
			.stream()
			.filter((fact) -> !(fact instanceof MorningEntry) || !fact.day().isBefore(state.day().minusDays(200)))
			.toList();
		assertThat(Course.from(state, new Timeline(recent), BOOK, Story.day(230)))
			.containsExactly(whole.get(whole.size() - 1));
	}

	@Test
	void leavesDecidedDaysAsTheyWereWhenAnEarlierFirstFactComesIn() {
		DayAssessment before = Story.ofANewcomer().well(0).on(0);
		List<DayAssessment> after = Story.ofANewcomer().well(0).well(1).late(-5, 1, (e) -> e).lived(1);
		assertThat(after.get(after.size() - 2)).isEqualTo(before);
	}

}
