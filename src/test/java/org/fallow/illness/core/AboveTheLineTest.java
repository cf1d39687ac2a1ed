package org.fallow.illness.core;

import org.fallow.baseline.RhrFlag;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Above the line: when it starts, stands and ends, and a pulse too fast for anybody, from
 * the decision text and its small readings (D). The known athlete has a line of 4.
 */
class AboveTheLineTest {

	private static boolean stands(Story story, int day) {
		return story.on(day).rhr().above() != null;
	}

	@Test
	void standsThroughMissingMorningsUntilAReadingBelowFour() {
		Story story = Story.ofAKnownAthlete().rhr(0, 54).rhr(1, 54).rhr(6, 54).rhr(7, 53.9);
		assertThat(stands(story, 0)).isFalse();
		assertThat(story.on(1).rhr().above()).isEqualTo(Story.day(1));
		assertThat(story.on(5).rhr().above()).as("a silent week").isEqualTo(Story.day(1));
		assertThat(stands(story, 6)).as("4 does not end it").isTrue();
		assertThat(stands(story, 7)).isFalse();
	}

	@Test
	void isJudgedEveryMorningSoALastingRiseStaysBad() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, Severity.MODERATE);
		story.rhr(1, 56).rhr(2, 56).rhr(3, 56).rhr(4, 56);
		assertThat(story.on(4).mark()).isEqualTo(Mark.BAD);
		assertThat(story.on(4).rhr().above()).isEqualTo(Story.day(2));
		assertThat(story.rhr(5, 54).on(5).mark()).as("4 and 6").isEqualTo(Mark.BAD);
		assertThat(story.withoutRhr(6).on(6).mark()).as("only standing").isEqualTo(Mark.NEITHER);
	}

	@Test
	void standsThroughOpeningAndHoldAndTheirEnd() {
		Story story = Story.ofAKnownAthlete().rhr(0, 58).sick(1, Symptom.CHEST_PAIN, Severity.MILD);
		assertThat(stands(Story.ofAKnownAthlete().rhr(0, 58).withoutRhr(1), 1)).isTrue();
		Story ill = Story.ofAKnownAthlete()
			.rhr(0, 58)
			.morning(1, (e) -> e.rhr(null).symptom(Symptom.FATIGUE, Severity.MODERATE))
			.withoutRhr(2);
		assertThat(stands(ill, 2)).isTrue();
		assertThat(story.clearance(1)).isEqualTo(Clearance.REFER);
	}

	@Test
	void endsWithSymptomsOnly() {
		Story ill = Story.ofAKnownAthlete()
			.rhr(0, 58)
			.morning(1, (e) -> e.rhr(null).symptom(Symptom.FATIGUE, Severity.MODERATE));
		ill.add(new IllnessEvent.SymptomsOnly(Story.day(2), ill.recorded(2, 8), "another strap"));
		ill.withoutRhr(2);
		assertThat(stands(ill, 1)).isTrue();
		assertThat(stands(ill, 2)).isFalse();
		assertThat(stands(ill.rhr(3, 58), 3)).as("none starts after").isFalse();
	}

	@Test
	void endsWhenNoSeriesHasABaseline() {
		Story story = Story.ofAKnownAthlete().rhr(0, 58);
		assertThat(stands(story, 32)).as("28 days on the latest of 60 are enough").isTrue();
		assertThat(stands(story, 70)).isFalse();
	}

	/**
	 * Two days late, a low reading does not come between, a raised one helps to start.
	 */
	@Test
	void letsALateReadingHelpAndNeverComeBetween() {
		Story between = Story.ofAKnownAthlete().rhr(0, 54).late(1, 2, (e) -> e.rhr(50.0)).rhr(2, 54);
		assertThat(between.on(2).rhr().starts()).isTrue();
		Story helps = Story.ofAKnownAthlete().late(0, 1, (e) -> e.rhr(54.0)).rhr(1, 54);
		assertThat(helps.on(1).rhr().starts()).isTrue();
		Story ends = Story.ofAKnownAthlete().rhr(0, 58).late(1, 2, (e) -> e.rhr(50.0));
		assertThat(stands(ends, 2)).as("a late reading never ends it").isTrue();
	}

	@Test
	void takesACorrectedReadingBeforeAsKnownNow() {
		Story story = Story.ofAKnownAthlete().rhr(0, 54).late(0, 1, (e) -> e.rhr(50.0)).rhr(1, 54);
		assertThat(story.on(1).rhr().starts()).isFalse();
	}

	/** A reading of a series without a baseline is left out in every respect. */
	@Test
	void passesOverAnotherSeries() {
		Story story = Story.ofAKnownAthlete().rhr(0, 54).morning(1, (e) -> e.by(Method.WORN).rhr(40.0)).rhr(2, 54);
		assertThat(story.on(2).rhr().starts()).as("the reading before is that of the strap").isTrue();
		assertThat(stands(story, 1)).isFalse();
	}

	@Test
	void takesASickMorningAsTheReadingBefore() {
		Story story = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.rhr(54.0).symptom(Symptom.RUNNY_NOSE, Severity.MILD))
			.rhr(1, 54);
		assertThat(story.on(1).rhr().starts()).isTrue();
	}

	@Test
	void restsOnAPulseTooFastForAnybodyWithoutABaseline() {
		Story calm = Story.ofANewcomer().rhr(0, 99);
		assertThat(calm.clearance(0)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(calm.on(0).notices()).extracting("code").contains("advised.ask-symptoms");
		Story fast = Story.ofANewcomer().rhr(0, 100);
		assertThat(fast.on(0).rhr().flag()).isEqualTo(RhrFlag.VERY_HIGH);
		assertThat(fast.clearance(0)).isEqualTo(Clearance.REST);
		assertThat(fast.reasons(0)).containsExactly("reason.rhr-too-fast");
		assertThat(fast.on(0).mark()).isEqualTo(Mark.BAD);
		assertThat(stands(fast, 0)).as("nothing stands above no baseline").isFalse();
	}

	@Test
	void countsAPulseStandingFromTwentyMore() {
		Story slow = Story.ofANewcomer().morning(0, (e) -> e.posture(Posture.STANDING).rhr(119.0));
		assertThat(slow.clearance(0)).isEqualTo(Clearance.FULL_TRAINING);
		Story fast = Story.ofANewcomer().morning(0, (e) -> e.posture(Posture.STANDING).rhr(120.0));
		assertThat(fast.clearance(0)).isEqualTo(Clearance.REST);
	}

	/** Without a baseline until a lower reading, from the fourth morning Easy only. */
	@Test
	void keepsAPulseTooFastUntilALowerOne() {
		Story story = Story.ofANewcomer().rhr(0, 124).withoutRhr(1).withoutRhr(2).withoutRhr(3).withoutRhr(4);
		assertThat(story.clearance(1)).isEqualTo(Clearance.REST);
		assertThat(story.clearance(3)).isEqualTo(Clearance.REST);
		assertThat(story.clearance(4)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.reasons(4)).containsExactly("reason.rhr-left-out");
		assertThat(story.rhr(5, 80).clearance(5)).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void advisesAClinicianOnASecondMorning() {
		Story story = Story.ofANewcomer().rhr(0, 124).rhr(1, 104);
		assertThat(story.on(0).notices()).extracting("code").doesNotContain("advised.clinician-very-high");
		assertThat(story.on(1).notices()).extracting("code").contains("advised.clinician-very-high");
		Story known = Story.ofAKnownAthlete().rhr(0, 71).rhr(1, 70);
		assertThat(known.on(1).notices()).extracting("code").contains("advised.clinician-very-high");
	}

	/**
	 * A kept High gives Rest on three calendar mornings, and from the fourth easy only.
	 */
	@Test
	void restsOnThreeMorningsAfterAHighOne() {
		Story story = Story.ofAKnownAthlete().rhr(0, 62).withoutRhr(1).withoutRhr(3).withoutRhr(4);
		assertThat(story.clearance(2)).as("no entry").isEqualTo(Clearance.REST);
		assertThat(story.clearance(3)).isEqualTo(Clearance.REST);
		assertThat(story.clearance(4)).isEqualTo(Clearance.EASY_ONLY);
	}

	/** In an episode upper and line are held with the baseline. */
	@Test
	void holdsTheLineInAnEpisode() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, Severity.MODERATE).rhr(1, 50);
		assertThat(story.on(1).rhr().line()).isEqualTo(story.on(0).rhr().line());
		assertThat(story.on(1).rhr().line().n()).isEqualTo(25);
	}

}
