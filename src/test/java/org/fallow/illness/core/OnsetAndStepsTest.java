package org.fallow.illness.core;

import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.Fact;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What an episode's onset is, what its path is judged from, and when symptoms step back,
 * at the edges of the decision text.
 */
class OnsetAndStepsTest {

	private static final Severity MILD = Severity.MILD;

	private static Story threeWeeks() {
		return Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
	}

	/** In Stage 2 from day 10 on, in Stage 3 from day 17. */
	private static Story returning(int to) {
		return threeWeeks().well(2, to).runs(3, to - 1);
	}

	/** A cold on days 0 to 2, Stage 1 of the short path on day 3; no run is logged. */
	private static Story aCold() {
		return Story.ofAKnownAthlete().sick(0, 2, Symptom.SNEEZING, MILD).well(3);
	}

	private static List<Decision> decided(Story story, int day) {
		return story.on(day).decisions();
	}

	@Test
	void beginsWithTheFirstOfThreeColdMorningsThoughTheThirdIsWorse() {
		Story story = Story.ofAKnownAthlete().sick(0, 1, Symptom.SNEEZING, MILD);
		story.morning(2, (e) -> e.symptom(Symptom.SNEEZING, MILD).symptom(Symptom.FATIGUE, MILD));
		assertThat(story.episode(2).firstOnset()).isEqualTo(Story.day(0));
	}

	@Test
	void beginsWithTheMorningThatOpensItNotWithOneColdMorningBefore() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.SNEEZING, MILD).sick(1, Symptom.FATIGUE, MILD).well(2, 3);
		assertThat(story.episode(1).firstOnset()).isEqualTo(Story.day(1));
		assertThat(story.episode(3).firstOnset()).isEqualTo(Story.day(1));
	}

	/** Their episode is over; a well morning corrected makes them no new illness. */
	@Test
	void opensNothingAgainFromColdMorningsOfAClosedEpisode() {
		Story story = aCold().well(4, 11).runs(3, 10);
		assertThat(story.stage(10)).isEqualTo(-1);
		story.late(5, 11, (e) -> e);
		assertThat(story.stage(11)).isEqualTo(-1);
		assertThat(story.clearance(11)).isEqualTo(Clearance.FULL_TRAINING);
	}

	/** A hold opens an episode if none is open, also when it stands again. */
	@Test
	void opensAnEpisodeWhenAHoldStandsAgainAfterTheClose() {
		Story story = Story.ofAKnownAthlete().hold(0).cleared(1, 40, Clearance.FULL_TRAINING).well(0, 41).runs(2, 20);
		assertThat(story.stage(40)).isEqualTo(-1);
		assertThat(story.clearance(40)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(story.clearance(41)).isEqualTo(Clearance.REFER);
		assertThat(story.episode(41).firstOnset()).isEqualTo(Story.day(41));
		assertThat(story.episode(41).path()).isEqualTo(PathName.THREE_WEEK);
	}

	@ParameterizedTest
	@CsvSource({ "7, SHORT", "8, THREE_WEEK" })
	void takesAWorstRatingOfUpToSevenForNotSevere(int worst, PathName path) {
		Story story = Story.ofAKnownAthlete().well(0).report(0, 0, ReportKind.ABOVE_NECK, worst);
		assertThat(story.episode(0).path()).isEqualTo(path);
		assertThat(story.on(0).judgedFrom().aboveTheNeck()).isTrue();
	}

	@Test
	void takesTheShortPathForNothingBesidesACold() {
		Story fever = Story.ofAKnownAthlete().morning(0, (e) -> e.fever().symptom(Symptom.SNEEZING, MILD));
		assertThat(fever.episode(0).path()).isEqualTo(PathName.THREE_WEEK);
		assertThat(fever.on(0).judgedFrom().fever()).isTrue();
		Story tired = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.symptom(Symptom.FATIGUE, MILD).symptom(Symptom.SNEEZING, MILD));
		assertThat(tired.episode(0).path()).isEqualTo(PathName.THREE_WEEK);
		assertThat(tired.on(0).judgedFrom().other()).isTrue();
	}

	/** Lengths run to the last symptomatic morning before Stage 1. */
	@Test
	void measuresNoSymptomFromStage1On() {
		Story ticked = aCold().well(4, 8).sick(9, Symptom.SNEEZING, MILD);
		assertThat(ticked.on(9).judgedFrom().illDays()).isEqualTo(3);
		assertThat(ticked.episode(9).path()).isEqualTo(PathName.SHORT);
		Story reported = aCold().well(4, 9).report(9, 9, ReportKind.ABOVE_NECK, 2);
		assertThat(reported.on(9).judgedFrom().illDays()).isEqualTo(3);
		assertThat(reported.episode(9).path()).isEqualTo(PathName.SHORT);
	}

	@Test
	void keepsTheDayStage1WasReachedThroughStepsBack() {
		Story story = returning(10).rhr(11, 58).rhr(12, 58).rhr(13, 58);
		assertThat(story.episode(3).stage1On()).isEqualTo(Story.day(3));
		assertThat(story.stage(13)).isEqualTo(1);
		assertThat(story.episode(13).stage1On()).isEqualTo(Story.day(3));
		assertThat(story.episode(13).stage1First()).isEqualTo(Story.day(3));
	}

	@Test
	void judgesNoEpisodeFromAReportOfAnEarlierOne() {
		Story story = Story.ofAKnownAthlete()
			.report(0, 0, ReportKind.COVID, 8)
			.well(0, 1)
			.withdrawn(1)
			.sick(2, 4, Symptom.SNEEZING, MILD);
		assertThat(story.episode(4).firstOnset()).isEqualTo(Story.day(2));
		assertThat(story.episode(4).path()).isEqualTo(PathName.SHORT);
	}

	@Test
	void countsNoDaysWhileIll() {
		Story story = Story.ofAKnownAthlete().report(0, 0, ReportKind.COVID, 8).well(0, 6);
		assertThat(story.stage(6)).isZero();
		assertThat(story.on(5).mark()).isEqualTo(Mark.GOOD);
		assertThat(story.episode(6).counted()).isZero();
	}

	@Test
	void stepsBackForAReportedColdAndFallsIllForAnythingElse() {
		Story cold = returning(11).report(11, 11, ReportKind.ABOVE_NECK, 2);
		assertThat(decided(cold, 11)).containsExactly(new Decision(Decision.Kind.BACK_BY_SYMPTOMS, 2, 1));
		Story stomach = returning(11).report(11, 11, ReportKind.STOMACH, 2);
		assertThat(decided(stomach, 11)).contains(new Decision(Decision.Kind.RELAPSE, 2, 0));
		assertThat(stomach.episode(11).latestOnset()).isEqualTo(Story.day(11));
	}

	/** A hold, and a red flag after a session, are taken as symptoms of illness. */
	@Test
	void fallsIllWithAHold() {
		assertThat(decided(returning(11).hold(11), 11)).contains(new Decision(Decision.Kind.RELAPSE, 2, 0));
		Story session = returning(11).session(11, 3.0, Intensity.EASY, AfterSession.PALPITATIONS);
		assertThat(decided(session, 11)).contains(new Decision(Decision.Kind.RELAPSE, 2, 0));
	}

	/** Of the day before Stage 1 it belongs to the illness, not to a relapse. */
	@Test
	void doesNotRelapseForASickMorningOfBeforeStage1() {
		Story story = returning(11).late(2, 11, (e) -> e.symptom(Symptom.FATIGUE, MILD));
		assertThat(decided(story, 11)).isEmpty();
		assertThat(story.stage(11)).isEqualTo(2);
	}

	@Test
	void doesNotRelapseBeforeTheDayOfASickMorning() {
		Fact ahead = new Story.Entry().symptom(Symptom.FATIGUE, MILD).at(14, Story.ofANewcomer().recorded(11, 8));
		Story story = returning(11).add(ahead);
		assertThat(decided(story, 11)).isEmpty();
		assertThat(story.stage(11)).isEqualTo(2);
	}

	@Test
	void stepsBackForColdsAtMostOnceInThreeMornings() {
		Story story = returning(17).sick(18, Symptom.SNEEZING, MILD);
		assertThat(decided(story, 18)).containsExactly(new Decision(Decision.Kind.BACK_BY_SYMPTOMS, 3, 2));
		Story soon = returning(17).sick(18, Symptom.SNEEZING, MILD).well(19).sick(20, Symptom.SNEEZING, MILD);
		assertThat(decided(soon, 20)).isEmpty();
		Story later = returning(17).sick(18, Symptom.SNEEZING, MILD).well(19, 20).sick(21, Symptom.SNEEZING, MILD);
		assertThat(decided(later, 21)).containsExactly(new Decision(Decision.Kind.BACK_BY_SYMPTOMS, 2, 1));
	}

	/** From ill there is no stage back: the row of cold mornings only begins anew. */
	@Test
	void stepsBackNoFurtherThanIll() {
		Story story = aCold().sick(4, 7, Symptom.SNEEZING, MILD);
		assertThat(decided(story, 4)).containsExactly(new Decision(Decision.Kind.BACK_BY_SYMPTOMS, 1, 0));
		assertThat(decided(story, 7)).isEmpty();
		assertThat(story.stage(7)).isZero();
	}

	@Test
	void measuresUpToAReportAfterTheLastSickMorningAndNoShorterForOneBefore() {
		Story after = Story.ofAKnownAthlete().sick(0, 2, Symptom.SNEEZING, MILD).report(5, 0, ReportKind.ABOVE_NECK, 2);
		assertThat(after.on(5).judgedFrom().illDays()).isEqualTo(6);
		Story before = Story.ofAKnownAthlete()
			.sick(0, 4, Symptom.SNEEZING, MILD)
			.report(2, 0, ReportKind.ABOVE_NECK, 2);
		assertThat(before.on(4).judgedFrom().illDays()).isEqualTo(5);
	}

	/**
	 * "Onset = first such morning", however late the row of cold mornings comes in: over
	 * ten days is the long path.
	 */
	@Test
	void followsALateRowOfColdMorningsToItsFirst() {
		Story story = Story.ofAKnownAthlete().sick(0, 3, Symptom.SNEEZING, MILD);
		for (int day = -8; day < 0; day++) {
			story.late(day, 3, (e) -> e.symptom(Symptom.SNEEZING, MILD));
		}
		assertThat(story.episode(3).firstOnset()).isEqualTo(Story.day(-8));
		assertThat(story.on(3).judgedFrom().illDays()).isEqualTo(12);
		assertThat(story.episode(3).path()).isEqualTo(PathName.LONG);
	}

	/** A morning without a cold ends the row: what lies before is another cold. */
	@Test
	void stopsALateRowAtAMorningWithoutACold() {
		Story story = Story.ofAKnownAthlete().sick(0, 3, Symptom.SNEEZING, MILD);
		for (int day : new int[] { -8, -7, -2, -1 }) {
			story.late(day, 3, (e) -> e.symptom(Symptom.SNEEZING, MILD));
		}
		assertThat(story.episode(3).firstOnset()).isEqualTo(Story.day(-2));
	}

}
