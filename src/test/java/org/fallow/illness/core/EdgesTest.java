package org.fallow.illness.core;

import java.util.List;
import java.util.Objects;

import org.fallow.baseline.HrvFlag;
import org.fallow.entry.Activity;
import org.fallow.entry.Method;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.fallow.rules.Clearance.EASY_ONLY;
import static org.fallow.rules.Clearance.FULL_TRAINING;
import static org.fallow.rules.Clearance.REFER;
import static org.fallow.rules.Clearance.REST;

/**
 * Edges of the day's step that no other test had met, found by changing the core and
 * seeing that nothing failed.
 */
class EdgesTest {

	private static final Severity MILD = Severity.MILD;

	/** Fatigue on days 0 and 1, Stage 1 on day 3, Stage 2 on 10, Stage 3 on 17. */
	private static Story threeWeeks() {
		return Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
	}

	private static Story inStage1() {
		return threeWeeks().well(2, 3);
	}

	private static Story inStage2() {
		return threeWeeks().well(2, 10).runs(3, 9);
	}

	@Test
	void doesNotCountTheMorningOfAReportAsSymptomFree() {
		Story story = threeWeeks().well(2, 3).report(2, 1, ReportKind.ABOVE_NECK, 2);
		assertThat(story.on(2).mark()).isEqualTo(Mark.BAD);
		assertThat(story.criterion(3, "symptom-free").observed()).containsExactly("1");
		assertThat(story.stage(3)).isZero();
	}

	@Test
	void saysOnTheSheetThatFeverWasReportedYesterday() {
		Story story = threeWeeks().well(2, 5).report(3, 0, ReportKind.FEVER, 4);
		assertThat(story.criterion(3, "no-fever").shuts()).isTrue();
		assertThat(story.criterion(4, "no-fever").shuts()).isTrue();
		assertThat(story.criterion(5, "no-fever").shuts()).isFalse();
	}

	@Test
	void withdrawsNothingOnTheDayOfAFeverReportOrTheDayAfter() {
		Story story = Story.ofAKnownAthlete().well(0, 3).report(0, 0, ReportKind.FEVER, 4);
		assertThat(story.withdrawn(1).stage(1)).isZero();
		assertThat(story.withdrawn(2).stage(2)).isEqualTo(-1);
		Story other = Story.ofAKnownAthlete().well(0).report(0, 0, ReportKind.CHEST, 4).withdrawn(0);
		assertThat(other.stage(0)).isEqualTo(-1);
	}

	@Test
	void notesTheStageAnEpisodeWasWithdrawnFrom() {
		assertThat(inStage1().well(4).withdrawn(4).on(4).decisions())
			.containsExactly(new Decision(Decision.Kind.WITHDRAWN, 1, -1));
		assertThat(threeWeeks().withdrawn(1).on(1).decisions())
			.containsExactly(new Decision(Decision.Kind.WITHDRAWN, 0, -1));
		assertThat(Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, MILD).withdrawn(0).on(0).decisions())
			.containsExactly(new Decision(Decision.Kind.WITHDRAWN, -1, -1));
	}

	@Test
	void countsTheLeastDaysFromAnEarlierOnsetThatComesInLate() {
		Story story = threeWeeks().late(-2, 2, (e) -> e.symptom(Symptom.MUSCLE_ACHES, MILD)).well(2);
		assertThat(story.episode(2).latestOnset()).isEqualTo(Story.day(-2));
		assertThat(story.episode(2).lengthFrom()).isEqualTo(Story.day(-2));
		assertThat(story.criterion(2, "least-days").observed()).containsExactly("4");
	}

	@Test
	void takesALateSickMorningOutOfTheBaselineHeldInAnEpisode() {
		Story story = threeWeeks().well(2);
		assertThat(Objects.requireNonNull(story.episode(2).held().rhr()).n()).isEqualTo(25);
		story.late(-10, 2, (e) -> e.symptom(Symptom.SNEEZING, MILD));
		assertThat(Objects.requireNonNull(story.episode(2).held().rhr()).n()).isEqualTo(24);
	}

	@Test
	void movesNoOnsetToADayBeforeTheLastClose() {
		Story story = threeWeeks().well(2, 29).runs(3, 20).sick(30, Symptom.FATIGUE, MILD).well(31);
		assertThat(story.stage(24)).isEqualTo(-1);
		story.late(20, 31, (e) -> e.symptom(Symptom.FATIGUE, MILD));
		assertThat(story.episode(31).firstOnset()).isEqualTo(Story.day(30));
		story.late(28, 31, (e) -> e.symptom(Symptom.FATIGUE, MILD));
		assertThat(story.episode(31).firstOnset()).as("after the close").isEqualTo(Story.day(28));
	}

	@Test
	void takesTheThreeWeekPathForAColdUnderAHold() {
		Story cold = Story.ofAKnownAthlete().sick(0, 2, Symptom.SNEEZING, MILD);
		assertThat(cold.episode(2).path()).isEqualTo(PathName.SHORT);
		assertThat(cold.hold(2).episode(2).path()).isEqualTo(PathName.THREE_WEEK);
	}

	/** After its until-day a hold stands again; the next clearance resumes in ill. */
	@Test
	void goesBackToIllWhenAHoldThatStoodAgainIsLifted() {
		Story story = Story.ofAKnownAthlete().hold(0).cleared(0, 20, FULL_TRAINING).well(0, 22);
		assertThat(story.stage(20)).isEqualTo(1);
		assertThat(story.clearance(20)).isEqualTo(EASY_ONLY);
		assertThat(story.clearance(21)).isEqualTo(REFER);
		assertThat(story.stage(21)).isEqualTo(1);
		story.cleared(22, null, FULL_TRAINING);
		assertThat(story.on(22).decisions()).containsExactly(new Decision(Decision.Kind.RESUMED, 1, 0));
		assertThat(story.clearance(22)).isEqualTo(REST);
		assertThat(story.episode(22).stageSince()).isEqualTo(Story.day(22));
	}

	@Test
	void countsBadMorningsAndSaysWhereItWent() {
		Story story = inStage2().rhr(11, 58).rhr(12, 58).rhr(13, 58);
		assertThat(story.criterion(11, "no-bad-morning").observed()).containsExactly("1");
		assertThat(story.criterion(12, "no-bad-morning").observed()).containsExactly("2");
		assertThat(story.on(13).decisions()).containsExactly(new Decision(Decision.Kind.BACK_BY_NUMBERS, 2, 1));
	}

	@Test
	void opensAGateOnTheDayALongerPathIsTakenIfThatOnesCriteriaAreMet() {
		Story story = Story.ofAKnownAthlete().sick(0, 2, Symptom.SORE_THROAT, MILD).well(3, 11);
		for (int day = 8; day <= 10; day++) {
			story.add(new SessionLog("late" + day, Story.day(day), story.recorded(11, 5), Activity.RUN, 30, 3.0,
					Intensity.EASY, List.of(), false, null));
		}
		story.late(1, 11, (e) -> e.symptom(Symptom.SORE_THROAT, Severity.SEVERE));
		assertThat(story.on(11).decisions()).containsExactly(new Decision(Decision.Kind.LONGER_PATH, 1, 1),
				new Decision(Decision.Kind.GATE, 1, 2));
	}

	@Test
	void holdsANewcomersSilenceAgainstThemFromTheFourthMorningOn() {
		Story story = Story.ofANewcomer().well(0, 6);
		for (int day = 7; day <= 10; day++) {
			story.withoutRhr(day);
		}
		assertThat(story.clearance(9)).isEqualTo(FULL_TRAINING);
		assertThat(story.clearance(10)).isEqualTo(EASY_ONLY);
	}

	@Test
	void holdsNoSilenceAgainstAnAthleteWithoutABaseline() {
		Story story = Story.ofANewcomer().well(0, 2);
		for (int day = 3; day <= 9; day++) {
			story.withoutRhr(day);
		}
		assertThat(story.clearance(9)).isEqualTo(FULL_TRAINING);
	}

	@Test
	void seesARaisedMorningThatWasEnteredADayLate() {
		assertThat(Story.ofAKnownAthlete().rhr(1, 54).clearance(1)).isEqualTo(FULL_TRAINING);
		Story late = Story.ofAKnownAthlete().late(0, 1, (e) -> e.rhr(54.0)).rhr(1, 54);
		assertThat(late.clearance(1)).isEqualTo(EASY_ONLY);
		assertThat(late.reasons(1)).containsExactly("reason.above-the-line");
	}

	@Test
	void keepsAFlagInAnEpisodeButNotUnderSymptomsOnly() {
		Story story = inStage1().rhr(4, 62).withoutRhr(5);
		assertThat(story.on(5).mark()).isEqualTo(Mark.BAD);
		assertThat(story.clearance(5)).isEqualTo(REST);
		Story free = inStage1().rhr(4, 62).symptomsOnly(5).morning(5, (e) -> e.by(Method.WORN));
		assertThat(free.on(5).mark()).isEqualTo(Mark.GOOD);
		assertThat(free.clearance(5)).isEqualTo(EASY_ONLY);
	}

	@Test
	void needsThreeReadingsOfVariability() {
		Story story = Story.ofANewcomer();
		for (int day = 0; day < 28; day++) {
			story.morning(day, (e) -> e.rmssd(65.0));
		}
		story.well(28, 33);
		assertThat(story.on(31).hrv().values()).hasSize(3);
		assertThat(story.on(31).hrv().flag()).isEqualTo(HrvFlag.NORMAL);
		assertThat(story.on(32).hrv().values()).hasSize(2);
		assertThat(story.on(32).hrv().flag()).isNull();
	}

	@Test
	void saysSinceWhenACriterionStandsAsItDoes() {
		Story story = threeWeeks().well(2).rhr(3, 58).rhr(4, 58);
		assertThat(story.criterion(4, "quiet").since()).as("quiet on day 2").isEqualTo(Story.day(3));
		assertThat(story.criterion(4, "symptom-free").since()).isEqualTo(Story.day(3));
		assertThat(inStage2().well(11).criterion(11, "counted").since()).isEqualTo(Story.day(10));
	}

	@Test
	void comparesNoReadingOfAnotherMethodInAnEpisode() {
		Story story = inStage1().morning(4, (e) -> e.by(Method.WORN).rhr(75.0));
		assertThat(story.on(4).rhr().flag()).isNull();
		assertThat(story.clearance(4)).isNotEqualTo(Clearance.REST).isEqualTo(EASY_ONLY);
	}

}
