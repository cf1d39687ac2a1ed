package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.fallow.rules.Clearance.EASY_ONLY;
import static org.fallow.rules.Clearance.FULL_TRAINING;
import static org.fallow.rules.Clearance.REFER;
import static org.fallow.rules.Clearance.REST;

/**
 * Episodes, gates, stages, steps back, holds and clearances, rule by rule of the decision
 * text.
 */
class ReturnTest {

	/**
	 * Fatigue on days 0 and 1: Stage 1 on day 3, Stage 2 on 10, Stage 3 on 17, out on 24.
	 */
	private static Story threeWeeks() {
		return Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
	}

	private static Story inStage1() {
		return threeWeeks().well(2, 3);
	}

	private static Story inStage2() {
		return threeWeeks().well(2, 10).runs(3, 9);
	}

	private static Story inStage3() {
		return threeWeeks().well(2, 17).runs(3, 16);
	}

	@Test
	void walksTheThreeWeekPathToItsEnd() {
		Story story = threeWeeks().well(2, 25).runs(3, 20);
		assertThat(story.stage(2)).isZero();
		assertThat(story.stage(3)).isEqualTo(1);
		assertThat(story.stage(9)).isEqualTo(1);
		assertThat(story.stage(10)).isEqualTo(2);
		assertThat(story.stage(17)).isEqualTo(3);
		assertThat(story.stage(23)).isEqualTo(3);
		assertThat(story.stage(24)).isEqualTo(-1);
		assertThat(List.of(story.clearance(2), story.clearance(3), story.clearance(10), story.clearance(17),
				story.clearance(24)))
			.containsExactly(REST, EASY_ONLY, EASY_ONLY, FULL_TRAINING, FULL_TRAINING);
	}

	@Test
	void opensNoGateOnTheDayTheEpisodeOpens() {
		Story story = Story.ofAKnownAthlete().well(0).report(0, -3, ReportKind.ABOVE_NECK, 2);
		assertThat(story.stage(0)).isZero();
		assertThat(story.well(1).stage(1)).isEqualTo(1);
	}

	/** Safer reading: who reports being ill is ill on the day of the report. */
	@Test
	void measuresAReportedIllnessUpToTheReport() {
		Story story = Story.ofAKnownAthlete().well(0).report(0, -10, ReportKind.ABOVE_NECK, 2);
		assertThat(story.episode(0).path()).isEqualTo(PathName.LONG);
	}

	/** Safer reading. */
	@Test
	void opensNoGateOnTheDayOfAStepBackOrAResumption() {
		Story story = Story.ofAKnownAthlete().hold(0).well(0, 4).cleared(3, null, FULL_TRAINING);
		assertThat(story.stage(3)).isZero();
		assertThat(story.stage(4)).isEqualTo(1);
	}

	@Test
	void judgesASessionOfTheDayAGateOpenedTheNextMorning() {
		Story story = inStage2().session(10, 4.0, Intensity.STRIDES);
		assertThat(story.stage(10)).isEqualTo(2);
		Story late = threeWeeks().well(2, 11).run(4, 6, 10);
		assertThat(late.stage(10)).as("the third run was logged after the entry").isEqualTo(1);
		assertThat(late.stage(11)).isEqualTo(2);
	}

	@Test
	void namesTheEarliestDayIfEveryMorningIsGood() {
		assertThat(threeWeeks().on(1).gate().earliest()).isEqualTo(Story.day(3));
		assertThat(inStage1().on(3).gate().earliest()).isEqualTo(Story.day(10));
		assertThat(inStage1().rhr(4, 62).on(4).gate().earliest()).isEqualTo(Story.day(11));
	}

	@Test
	void namesNoEarliestDayUnderAHold() {
		assertThat(inStage1().hold(3).on(3).gate().earliest()).isNull();
	}

	@Test
	void countsOneRunADayTowardsTheEarliestDay() {
		Story story = threeWeeks().well(2, 10);
		assertThat(story.stage(10)).isEqualTo(1);
		assertThat(story.criterion(10, "runs").state()).isEqualTo(CriterionState.NOT_MET);
		assertThat(story.on(10).gate().earliest()).isEqualTo(Story.day(13));
	}

	@Test
	void asksForSymptomFreeMorningsInARow() {
		assertThat(threeWeeks().well(2).criterion(2, "symptom-free").observed()).containsExactly("1");
		assertThat(threeWeeks().well(2).well(4).stage(4)).as("one missed morning does not break").isEqualTo(1);
		assertThat(threeWeeks().well(2).well(5).stage(5)).as("two together break").isZero();
	}

	/** Safer reading: filled in later, a morning was missed when it was lived. */
	@Test
	void doesNotCountAMorningFilledInLater() {
		Story story = threeWeeks().well(3).late(2, 3, (e) -> e);
		assertThat(story.criterion(3, "symptom-free").observed()).containsExactly("1");
	}

	@Test
	void asksForTwoMorningsWithoutFeverMedicine() {
		Story story = threeWeeks().well(2).morning(3, (e) -> e.medicine(FeverMedicine.OTHER)).well(4);
		assertThat(story.criterion(3, "no-fever").shuts()).isTrue();
		assertThat(story.stage(4)).isZero();
		assertThat(story.well(5).stage(5)).isEqualTo(1);
	}

	@Test
	void asksForAQuietMorning() {
		assertThat(threeWeeks().well(2).rhr(3, 53.9).criterion(3, "quiet").state()).isEqualTo(CriterionState.MET);
		assertThat(threeWeeks().well(2).rhr(3, 54).criterion(3, "quiet").shuts()).as("less than 4").isTrue();
		assertThat(threeWeeks().well(2).rhr(3, 44).criterion(3, "quiet").shuts()).as("low").isTrue();
		assertThat(threeWeeks().well(2).withoutRhr(3).criterion(3, "quiet").state())
			.isEqualTo(CriterionState.NOT_AVAILABLE);
		assertThat(threeWeeks().well(2).withoutRhr(3).stage(3)).isZero();
	}

	/** Within T by the median of the last three, of which two are enough. */

	@Test
	void asksThatTheAthleteFeelsAble() {
		assertThat(threeWeeks().well(2).morning(3, (e) -> e.feels(Feels.UNWELL)).stage(3)).isZero();
		assertThat(threeWeeks().well(2).morning(3, (e) -> e.feels(null)).stage(3)).isZero();
		assertThat(threeWeeks().well(2).morning(3, (e) -> e.feels(Feels.ABLE)).stage(3)).isEqualTo(1);
	}

	@Test
	void asksForFourMorningsWithoutABaseline() {
		Story story = Story.ofANewcomer().sick(0, Symptom.FATIGUE, Severity.MILD).well(1, 4);
		assertThat(story.stage(3)).isZero();
		assertThat(story.stage(4)).isEqualTo(1);
	}

	@Test
	void staysUntrackedThroughANewcomersEpisode() {
		Story story = Story.ofANewcomer().sick(0, Symptom.FATIGUE, Severity.MILD).well(1, 14).rhr(15, 75);
		assertThat(story.on(15).rhr().flag()).isNull();
	}

	@Test
	void shutsTheGateWhenTheMethodChangesUntilACoachGoesBySymptomsOnly() {
		Story story = threeWeeks();
		for (int day = 2; day <= 8; day++) {
			story.morning(day, (e) -> e.by(Method.WORN));
		}
		assertThat(story.stage(8)).isZero();
		assertThat(story.on(8).notices()).extracting("code").contains("advised.method-changed");
		assertThat(story.on(8).gate().earliest()).isNull();
		story.symptomsOnly(9).morning(9, (e) -> e.by(Method.WORN));
		assertThat(story.stage(9)).isEqualTo(1);
		assertThat(story.episode(9).symptomsOnly()).isTrue();
	}

	@Test
	void holdsTheBaselineOfBeforeTheOnset() {
		Story story = threeWeeks();
		for (int day = 2; day <= 20; day++) {
			story.rhr(day, 53);
		}
		assertThat(story.on(20).rhr().baseline()).isEqualTo(50);
		assertThat(story.on(20).rhr().heldAsOf()).isEqualTo(Story.day(-3));
	}

	@Test
	void goesOnHoldingItAfterTheCloseUntilSevenNewerReadings() {
		Story story = threeWeeks().well(2, 23).runs(3, 20);
		for (int day = 24; day <= 40; day++) {
			story.rhr(day, 52);
		}
		assertThat(story.stage(24)).isEqualTo(-1);
		assertThat(story.on(30).rhr().heldAsOf()).isEqualTo(Story.day(-3));
		assertThat(story.on(31).rhr().heldAsOf()).isNull();
		assertThat(story.on(40).rhr().baseline()).isEqualTo(52);
	}

	@Test
	void movesOnsetWhenAnEarlierSickMorningComesInLate() {
		Story story = threeWeeks().late(-2, 2, (e) -> e.symptom(Symptom.MUSCLE_ACHES, Severity.MILD)).well(2);
		assertThat(story.episode(2).firstOnset()).isEqualTo(Story.day(-2));
		assertThat(story.on(2).rhr().heldAsOf()).isEqualTo(Story.day(-5));
		assertThat(story.on(-2).clearance()).as("what was decided stays decided").isEqualTo(FULL_TRAINING);
	}

	@Test
	void opensLateForASickMorningThatComesInLate() {
		Story story = Story.ofAKnownAthlete().well(0).well(2).late(1, 3, Story.Entry::fever).well(3);
		assertThat(story.stage(2)).isEqualTo(-1);
		assertThat(story.stage(3)).isZero();
		assertThat(story.episode(3).firstOnset()).isEqualTo(Story.day(1));
	}

	/** Safer reading: an athlete's correction does not undo an opening. */
	@Test
	void staysOpenWhenTheAthleteCorrectsTheMorning() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, Severity.MILD).late(0, 0, (e) -> e);
		assertThat(story.stage(0)).isZero();
	}

	@Test
	void restsInStage1OnABadMorningAndRunsEasyInTheOthers() {
		assertThat(inStage1().rhr(4, 58).clearance(4)).isEqualTo(REST);
		assertThat(inStage2().rhr(11, 58).clearance(11)).isEqualTo(EASY_ONLY);
		assertThat(inStage3().rhr(18, 58).clearance(18)).isEqualTo(EASY_ONLY);
		assertThat(inStage3().rhr(18, 58).episode(19).counted()).as("the day does not count").isEqualTo(1);
	}

	@Test
	void stepsBackAfterThreeBadMorningsWithNoGoodOneBetween() {
		Story story = inStage2().rhr(11, 58).rhr(13, 58).rhr(14, 58);
		assertThat(story.stage(13)).isEqualTo(2);
		assertThat(story.stage(14)).isEqualTo(1);
		assertThat(story.episode(14).counted()).isZero();
		assertThat(kinds(story, 14)).contains(Decision.Kind.BACK_BY_NUMBERS);
	}

	@Test
	void separatesBadMorningsByAGoodOneButNotByAMissedOrLowOne() {
		assertThat(inStage2().rhr(11, 58).well(12).well(13).rhr(14, 58).rhr(15, 58).stage(15)).isEqualTo(2);
		assertThat(inStage2().rhr(11, 58).rhr(12, 44).rhr(13, 58).rhr(15, 58).stage(15)).isEqualTo(1);
	}

	@Test
	void fallsIllAgainOnOneLongerPathWhenSymptomsOfIllnessComeBack() {
		Story story = inStage2().sick(11, Symptom.FATIGUE, Severity.MILD);
		Episode episode = story.episode(11);
		assertThat(episode.stage()).isZero();
		assertThat(episode.path()).isEqualTo(PathName.LONG);
		assertThat(episode.latestOnset()).isEqualTo(Story.day(11));
		assertThat(episode.held().asOf()).as("the first onset keeps the baseline").isEqualTo(Story.day(-3));
		assertThat(kinds(story, 11)).contains(Decision.Kind.RELAPSE);
	}

	@Test
	void movesOnlyTheOnsetWhileARelapseRunsOn() {
		Story story = inStage2().sick(11, 12, Symptom.FATIGUE, Severity.MILD).sick(14, Symptom.FATIGUE, Severity.MILD);
		assertThat(story.episode(14).latestOnset()).isEqualTo(Story.day(14));
		assertThat(kinds(story, 14)).doesNotContain(Decision.Kind.RELAPSE);
	}

	@Test
	void relapsesOnceMoreInIllAfterAWellMorning() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, 2, Symptom.RUNNY_NOSE, Severity.MILD)
			.well(3, 4)
			.sick(5, Symptom.FATIGUE, Severity.MILD);
		assertThat(story.episode(5).path()).isEqualTo(PathName.THREE_WEEK);
		story.well(6).sick(7, Symptom.FATIGUE, Severity.MILD);
		assertThat(story.episode(7).path()).isEqualTo(PathName.LONG);
	}

	@Test
	void stepsBackOneStageForOtherSymptomsAtMostOnceInThreeMornings() {
		Story story = inStage3().sick(18, 21, Symptom.RUNNY_NOSE, Severity.MILD);
		assertThat(story.stage(18)).isEqualTo(2);
		assertThat(story.stage(19)).isEqualTo(2);
		assertThat(kinds(story, 19)).isEmpty();
		assertThat(story.stage(20)).as("three bad mornings by then").isEqualTo(1);
		assertThat(kinds(story, 21)).containsExactly(Decision.Kind.BACK_BY_SYMPTOMS);
	}

	@Test
	void asksThatNoSessionWasTooHardOrEndedBadly() {
		Story hard = threeWeeks().well(2, 10).runs(3, 6).session(7, 6.0, Intensity.EASY);
		assertThat(hard.criterion(10, "effort").shuts()).isTrue();
		assertThat(hard.stage(10)).isEqualTo(1);
		assertThat(hard.well(11).stage(11)).isEqualTo(2);
		Story tempo = threeWeeks().well(2, 10).runs(3, 6).session(8, 3.0, Intensity.THRESHOLD);
		assertThat(tempo.stage(10)).isEqualTo(1);
		Story yes = threeWeeks().well(2, 10).runs(3, 6).session(8, 2.0, Intensity.EASY, AfterSession.UNUSUAL_FATIGUE);
		assertThat(yes.criterion(10, "after-session").shuts()).isTrue();
		assertThat(yes.stage(10)).isEqualTo(1);
	}

	@Test
	void movesUpOnlyWithoutABadMorningAmongTheLastThree() {
		Story story = threeWeeks().well(2, 8).runs(3, 8).rhr(9, 58).well(10, 12);
		assertThat(story.stage(11)).isEqualTo(1);
		assertThat(story.criterion(11, "no-bad-morning").shuts()).isTrue();
		assertThat(story.stage(12)).isEqualTo(2);
	}

	@Test
	void judgesTheShortPathForAColdOfAWeek() {
		Story week = Story.ofAKnownAthlete().sick(0, 6, Symptom.SORE_THROAT, Severity.MILD);
		assertThat(week.episode(6).path()).isEqualTo(PathName.SHORT);
		assertThat(week.sick(7, Symptom.SORE_THROAT, Severity.MILD).episode(7).path()).isEqualTo(PathName.THREE_WEEK);
		Story moderate = Story.ofAKnownAthlete().sick(0, 2, Symptom.SORE_THROAT, Severity.MODERATE);
		assertThat(moderate.episode(2).path()).isEqualTo(PathName.SHORT);
	}

	@Test
	void judgesTheStomachPathForThreeDaysOfNothingElse() {
		Story three = Story.ofAKnownAthlete().sick(0, 2, Symptom.VOMITING, Severity.SEVERE);
		assertThat(three.episode(2).path()).isEqualTo(PathName.STOMACH);
		assertThat(three.sick(3, Symptom.VOMITING, Severity.MILD).episode(3).path()).isEqualTo(PathName.THREE_WEEK);
		Story both = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.symptom(Symptom.VOMITING, Severity.MILD).symptom(Symptom.RUNNY_NOSE, Severity.MILD));
		assertThat(both.episode(0).path()).as("with symptoms above the neck").isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void asksForEatingNormallyOnTheStomachPath() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.DIARRHOEA, Severity.MILD).well(1);
		assertThat(story.morning(2, (e) -> e.eating(false)).stage(2)).isZero();
		assertThat(story.late(2, 2, (e) -> e.eating(true)).stage(2)).isEqualTo(1);
	}

	@Test
	void judgesTheLongPath() {
		Story fever = Story.ofAKnownAthlete();
		for (int day = 0; day <= 2; day++) {
			fever.morning(day, Story.Entry::fever);
		}
		assertThat(fever.episode(1).path()).isEqualTo(PathName.THREE_WEEK);
		assertThat(fever.episode(2).path()).isEqualTo(PathName.LONG);
		Story chest = Story.ofAKnownAthlete().sick(0, 7, Symptom.WHEEZE, Severity.MILD);
		assertThat(chest.episode(6).path()).isEqualTo(PathName.THREE_WEEK);
		assertThat(chest.episode(7).path()).isEqualTo(PathName.LONG);
		Story any = Story.ofAKnownAthlete().sick(0, 10, Symptom.FATIGUE, Severity.MILD);
		assertThat(any.episode(9).path()).isEqualTo(PathName.THREE_WEEK);
		assertThat(any.episode(10).path()).isEqualTo(PathName.LONG);
		Story covid = Story.ofAKnownAthlete().well(0).report(0, 0, ReportKind.COVID, 8);
		assertThat(covid.episode(0).path()).isEqualTo(PathName.LONG);
	}

	@Test
	void neverShortensAPath() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, Symptom.FATIGUE, Severity.MILD)
			.late(0, 1, (e) -> e.symptom(Symptom.SORE_THROAT, Severity.MILD))
			.well(1);
		assertThat(story.episode(1).path()).isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void resumesInIllAfterAClearanceWithEveryGateStillToPass() {
		Story story = inStage2().hold(11).well(11, 13);
		assertThat(story.clearance(13)).isEqualTo(REFER);
		story.cleared(13, null, FULL_TRAINING);
		assertThat(kinds(story, 13)).contains(Decision.Kind.RESUMED);
		assertThat(story.clearance(13)).as("it never raises a stage by itself").isNotEqualTo(FULL_TRAINING);
		assertThat(story.episode(13).stage()).isLessThanOrEqualTo(1);
	}

	@Test
	void endsOnlyHoldsOlderThanTheClearance() {
		Story story = Story.ofAKnownAthlete().well(0).hold(0).cleared(0, null, FULL_TRAINING).hold(1).well(1);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.clearance(1)).isEqualTo(REFER);
	}

	@Test
	void letsTheHoldStandAgainAfterTheUntilDay() {
		Story story = Story.ofAKnownAthlete().well(0, 6).hold(0).cleared(1, 3, EASY_ONLY);
		assertThat(story.clearance(3)).isNotEqualTo(REFER);
		assertThat(story.clearance(4)).isEqualTo(REFER);
		story.cleared(5, null, FULL_TRAINING);
		assertThat(story.clearance(5)).isNotEqualTo(REFER);
	}

	@Test
	void capsByTheLatestClearanceThatCoversTheDay() {
		Story story = Story.ofAKnownAthlete().cleared(0, null, REST).cleared(1, 1, FULL_TRAINING).well(0, 2);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.clearance(1)).isEqualTo(FULL_TRAINING);
		assertThat(story.clearance(2)).isEqualTo(REST);
	}

	@Test
	void refusesABackDatedClearance() {
		LocalDate yesterday = Story.day(-1);
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new IllnessEvent.Cleared(yesterday, null, new Story().recorded(0, 9),
					Clearance.FULL_TRAINING, "a", "b", null))
			.withMessageContaining("back-dated");
	}

	@Test
	void opensAThreeWeekEpisodeForAHold() {
		Story story = Story.ofAKnownAthlete().well(0).hold(0);
		assertThat(story.episode(0).path()).isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void letsACoachWithdrawAnEpisodeButNotNearFeverNorUnderAHold() {
		Story story = threeWeeks().well(2).withdrawn(2);
		assertThat(story.stage(2)).isEqualTo(-1);
		assertThat(story.clearance(2)).isEqualTo(EASY_ONLY);
		assertThat(story.well(3).clearance(3)).isEqualTo(FULL_TRAINING);
		assertThat(Story.ofAKnownAthlete().morning(0, Story.Entry::fever).well(1).withdrawn(1).stage(1)).isZero();
		assertThat(Story.ofAKnownAthlete().well(0).hold(0).withdrawn(1).stage(1)).isZero();
	}

	@Test
	void opensNothingAgainFromFactsBeforeTheWithdrawal() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, 2, Symptom.RUNNY_NOSE, Severity.MILD)
			.withdrawn(2)
			.sick(3, Symptom.RUNNY_NOSE, Severity.MILD);
		assertThat(story.stage(2)).isEqualTo(-1);
		assertThat(story.stage(3)).as("cold mornings count afresh").isEqualTo(-1);
		assertThat(story.sick(4, 5, Symptom.RUNNY_NOSE, Severity.MILD).stage(5)).isZero();
	}

	@Test
	void keepsEveryDayFromBeforeOnsetToTheCloseOutOfBaselines() {
		Story story = threeWeeks().well(2, 60).runs(3, 20);
		assertThat(story.on(60).state().out()).containsExactly(new DayRange(Story.day(-3), Story.day(24)));
	}

	private static List<Decision.Kind> kinds(Story story, int day) {
		return story.on(day).decisions().stream().map(Decision::kind).toList();
	}

}
