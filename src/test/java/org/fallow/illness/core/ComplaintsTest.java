package org.fallow.illness.core;

import org.fallow.entry.ContextTag;
import org.fallow.entry.DeviceChange;
import org.fallow.entry.Feels;
import org.fallow.entry.KnownCause;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.Method;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.fallow.entry.Severity.MILD;
import static org.fallow.entry.Severity.MODERATE;
import static org.fallow.entry.Severity.SEVERE;
import static org.fallow.rules.Clearance.EASY_ONLY;
import static org.fallow.rules.Clearance.FULL_TRAINING;
import static org.fallow.rules.Clearance.REST;

/**
 * Complaints, known symptoms, silent mornings and series: rows of the decision text, told
 * with made-up days.
 */
class ComplaintsTest {

	@ParameterizedTest
	@EnumSource(names = { "PERIOD_PAIN", "LIMB_PAIN", "OTHER_COMPLAINT" })
	void hasNoConsequenceWhileMild(Symptom complaint) {
		Story story = complaining(complaint, MILD, Feels.WELL).well(1);
		assertThat(story.clearance(0)).isEqualTo(FULL_TRAINING);
		assertThat(story.stage(0)).isEqualTo(-1);
		assertThat(story.notices(0)).isEmpty();
		assertThat(story.on(1).rhr().n()).isEqualTo(28);
	}

	@ParameterizedTest
	@EnumSource(names = { "PERIOD_PAIN", "LIMB_PAIN", "OTHER_COMPLAINT" })
	void isEasyOnlyAndOutOfTheBaselineFromModerateOn(Symptom complaint) {
		Story story = complaining(complaint, MODERATE, Feels.ABLE).well(1);
		assertThat(story.clearance(0)).isEqualTo(EASY_ONLY);
		assertThat(story.reasons(0)).containsExactly("reason.complaint");
		assertThat(story.stage(0)).isEqualTo(-1);
		assertThat(story.on(1).rhr().n()).isEqualTo(27);
		assertThat(story.notices(0)).doesNotContain("advised.clinician-complaint", "advised.stay-away");
	}

	@Test
	void isOutOfTheBaselineWithFeelingUnwellHoweverMild() {
		Story story = complaining(Symptom.PERIOD_PAIN, MILD, Feels.UNWELL).well(1);
		assertThat(story.clearance(0)).isEqualTo(EASY_ONLY);
		assertThat(story.on(1).rhr().n()).isEqualTo(27);
	}

	@Test
	void sendsASevereOneToAClinicianAndALimbToAnInjury() {
		assertThat(complaining(Symptom.PERIOD_PAIN, SEVERE, Feels.ABLE).notices(0))
			.contains("advised.clinician-complaint")
			.doesNotContain("advised.note-injury");
		assertThat(complaining(Symptom.LIMB_PAIN, MODERATE, Feels.ABLE).notices(0)).contains("advised.note-injury");
		assertThat(complaining(Symptom.LIMB_PAIN, MILD, Feels.WELL).notices(0)).isEmpty();
	}

	@ParameterizedTest
	@EnumSource(names = { "WOUND", "SWOLLEN_CALF", "PREGNANCY_BLEEDING" })
	void restsForWhatNeedsAClinicianToday(Symptom symptom) {
		Story story = Story.ofAKnownAthlete().adult().sick(0, symptom, MILD);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.on(0).holding()).isFalse();
		assertThat(story.notices(0)).contains("advised.clinician-symptom");
	}

	@Test
	void isEasyAtBestInOwnWordsWhileItCouldBeAnIllness() {
		Story high = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.rhr(58.0).words(Symptom.OTHER_COMPLAINT, MILD, "insect bite"));
		assertThat(high.clearance(0)).isEqualTo(EASY_ONLY);
		Story back = Story.ofAKnownAthlete().adult().sick(0, 1, Symptom.FATIGUE, MODERATE).well(2, 3);
		back.morning(4, (e) -> e.words(Symptom.OTHER_COMPLAINT, MILD, "insect bite"));
		assertThat(back.stage(4)).isEqualTo(1);
		assertThat(back.on(4).mark()).isEqualTo(Mark.NEITHER);
		assertThat(back.well(5).episode(5).counted()).isEqualTo(1);
		Story quiet = complaining(Symptom.OTHER_COMPLAINT, MILD, Feels.WELL);
		assertThat(quiet.clearance(0)).isEqualTo(FULL_TRAINING);
	}

	@Test
	void passesOverTheCycleOnFiveTaggedMornings() {
		Story story = Story.ofAKnownAthlete().known(0, Symptom.FATIGUE, MODERATE, KnownCause.CYCLE);
		for (int day = 0; day <= 5; day++) {
			story.morning(day, (e) -> e.symptom(Symptom.FATIGUE, MODERATE).tagged(ContextTag.CYCLE_PHASE));
		}
		assertThat(story.clearance(4)).isEqualTo(FULL_TRAINING);
		assertThat(story.clearance(5)).isEqualTo(REST);
	}

	@Test
	void passesOverNothingOfTheCycleWithoutItsTag() {
		Story story = Story.ofAKnownAthlete().known(0, Symptom.FATIGUE, MODERATE, KnownCause.CYCLE);
		assertThat(story.sick(0, Symptom.FATIGUE, MILD).clearance(0)).isEqualTo(REST);
	}

	@Test
	void passesOverNauseaOfAPregnancy() {
		Story story = Story.ofAKnownAthlete().known(0, Symptom.NAUSEA, MODERATE, KnownCause.PREGNANCY);
		assertThat(story.sick(0, Symptom.NAUSEA, MODERATE).clearance(0)).isEqualTo(FULL_TRAINING);
		assertThat(story.sick(1, Symptom.NAUSEA, SEVERE).clearance(1)).isEqualTo(REST);
	}

	@Test
	void takesNothingForKnownThatIsNotListed() {
		Story story = Story.ofAKnownAthlete().known(0, Symptom.SORE_THROAT, MILD, KnownCause.ALLERGY);
		assertThat(story.sick(0, Symptom.SORE_THROAT, MILD).clearance(0)).isEqualTo(EASY_ONLY);
	}

	@Test
	void countsNothingForTheEpisodeInWhichItWasNoted() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, MODERATE).known(1, Symptom.SNEEZING, MILD);
		story.sick(1, 2, Symptom.SNEEZING, MILD);
		assertThat(story.on(2).mark()).isEqualTo(Mark.BAD);
		assertThat(story.on(2).seen().aboveTheNeck()).isTrue();
	}

	@Test
	void asksAfterThreeSilentMorningsUntilItIsAnswered() {
		Story story = Story.ofAKnownAthlete().well(0);
		unanswered(story, 4);
		unanswered(story, 5);
		assertThat(story.clearance(4)).isEqualTo(EASY_ONLY);
		assertThat(story.on(4).mark()).isEqualTo(Mark.NEITHER);
		assertThat(story.on(4).seen().besides().askedFrom()).isEqualTo(Story.day(1));
		assertThat(story.clearance(5)).isEqualTo(EASY_ONLY);
		assertThat(story.well(6).clearance(6)).isEqualTo(FULL_TRAINING);
		unanswered(story, 7);
		assertThat(story.clearance(7)).as("no is kept").isEqualTo(FULL_TRAINING);
	}

	@Test
	void asksNothingAfterTwoSilentMorningsNorBeforeTheFirstEver() {
		Story two = Story.ofAKnownAthlete().well(0);
		unanswered(two, 3);
		assertThat(two.clearance(3)).isEqualTo(FULL_TRAINING);
		Story first = Story.ofANewcomer().injured(-9, -5);
		unanswered(first, 0);
		assertThat(first.clearance(0)).isEqualTo(FULL_TRAINING);
	}

	@Test
	void asksNoLongerWhereTheMorningsAreFilledIn() {
		Story story = Story.ofAKnownAthlete().well(0);
		story.late(2, 4, (e) -> e.meanwhile(null));
		unanswered(story, 4);
		assertThat(story.clearance(4)).isEqualTo(FULL_TRAINING);
	}

	@Test
	void restsAfterAYesUntilTheReportIsComplete() {
		Story story = Story.ofAKnownAthlete().adult().well(0);
		story.morning(9, (e) -> e.meanwhile(Meanwhile.ill(null)));
		assertThat(story.clearance(9)).isEqualTo(REST);
		assertThat(story.episode(9).firstOnset()).isEqualTo(Story.day(1));
		story.well(10, 14);
		assertThat(story.stage(14)).as("no gate").isZero();
		assertThat(story.criterion(14, "meanwhile").shuts()).isTrue();
		Story told = Story.ofAKnownAthlete().adult().well(0);
		told.morning(9, (e) -> e.meanwhile(Meanwhile.ill(null))).report(9, 1, ReportKind.ABOVE_NECK, 2).well(10, 11);
		assertThat(told.on(9).seen().besides().owedSince()).isNull();
		assertThat(told.stage(11)).isEqualTo(1);
	}

	@Test
	void takesTheFirstDayThatWasTold() {
		Story story = Story.ofAKnownAthlete().adult().well(0);
		story.morning(9, (e) -> e.meanwhile(Meanwhile.ill(Story.day(6))));
		assertThat(story.episode(9).firstOnset()).isEqualTo(Story.day(6));
	}

	@Test
	void opensNoGateWhileItIsNotAnswered() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, Symptom.FATIGUE, MODERATE).well(1);
		unanswered(story, 5);
		unanswered(story, 6);
		assertThat(story.stage(6)).isZero();
		assertThat(story.criterion(6, "meanwhile").shuts()).isTrue();
		assertThat(story.well(7).stage(7)).isEqualTo(1);
	}

	/** In an episode own words of no illness are in doubt: no symptom-free morning. */
	@Test
	void countsNoMorningInDoubtAmongTheSymptomFreeOnes() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, MODERATE);
		story.morning(1, (e) -> e.words(Symptom.OTHER_COMPLAINT, MILD, "odd in the head")).well(2);
		assertThat(story.criterion(2, "symptom-free").observed()).containsExactly("1");
		assertThat(story.stage(2)).isZero();
		assertThat(story.well(3).stage(3)).isEqualTo(1);
		Story listed = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, MODERATE);
		assertThat(listed.sick(1, Symptom.LIMB_PAIN, MODERATE).well(2).stage(2)).as("listed").isEqualTo(1);
	}

	@Test
	void beginsANewSeriesWithAnotherDevice() {
		Story story = Story.ofAKnownAthlete().measuredAnew(0, DeviceChange.What.SOFTWARE, Method.STRAP).rhr(0, 44);
		assertThat(story.on(0).rhr().dev()).isNull();
		assertThat(story.on(0).rhr().series().since()).isEqualTo(Story.DAY_0);
		Story other = Story.ofAKnownAthlete().measuredAnew(0, DeviceChange.What.DEVICE, Method.WORN).rhr(0, 44);
		assertThat(other.on(0).rhr().dev()).isEqualTo(-6);
		Story all = Story.ofAKnownAthlete().measuredAnew(0, DeviceChange.What.PLACE, null).rhr(0, 44);
		assertThat(all.on(0).rhr().dev()).isNull();
	}

	@Test
	void advisesAClinicianWhereMedicineIsBegunInAnEpisode() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, Symptom.FATIGUE, MODERATE).medicine(1, true).well(1);
		assertThat(story.notices(0)).doesNotContain("advised.clinician-medicine");
		assertThat(story.notices(1)).contains("advised.clinician-medicine");
		Story before = Story.ofAKnownAthlete().adult().medicine(-9, true).sick(0, Symptom.FATIGUE, MODERATE);
		assertThat(before.notices(0)).doesNotContain("advised.clinician-medicine");
	}

	private static Story complaining(Symptom complaint, Severity severity, Feels feels) {
		return Story.ofAKnownAthlete().adult().morning(0, (e) -> e.symptom(complaint, severity).feels(feels));
	}

	private static void unanswered(Story story, int day) {
		story.morning(day, (e) -> e.meanwhile(null));
	}

}
