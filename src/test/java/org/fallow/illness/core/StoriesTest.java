package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.baseline.RhrFlag;
import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleBook;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.fallow.rules.Clearance.EASY_ONLY;
import static org.fallow.rules.Clearance.FULL_TRAINING;
import static org.fallow.rules.Clearance.NOT_ASSESSED;
import static org.fallow.rules.Clearance.REST;

/**
 * Whole stories of athletes, checked on the days that matter, through the public fold.
 */
class StoriesTest {

	private static final Severity MILD = Severity.MILD;

	/**
	 * Fatigue on days 0 and 1, Stage 1 on day 3, Stage 2 on day 10, runs on most days.
	 */
	private static Story inStage2() {
		return Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE).well(2, 11).runs(3, 11);
	}

	private static List<Clearance> clearances(Story story, int from, int to) {
		return story.lived(to)
			.stream()
			.filter((day) -> !day.day().isBefore(Story.day(from)))
			.map(DayAssessment::clearance)
			.toList();
	}

	private static List<String> notices(Story story, int day) {
		return story.on(day).notices().stream().map((notice) -> notice.code()).toList();
	}

	private static List<Decision.Kind> decided(Story story, int day) {
		return story.on(day).decisions().stream().map(Decision::kind).toList();
	}

	@Test
	void fallsIllAgainWithFeverInStage2() {
		Story story = inStage2();
		assertThat(story.stage(11)).isEqualTo(2);
		story.morning(12, Story.Entry::fever).morning(13, Story.Entry::fever).well(14, 24);
		assertThat(decided(story, 12)).containsExactly(Decision.Kind.RELAPSE, Decision.Kind.LONGER_PATH);
		assertThat(decided(story, 13)).as("once per relapse").isEmpty();
		assertThat(story.stage(12)).isZero();
		assertThat(story.episode(13).path()).isEqualTo(PathName.LONG);
		assertThat(story.episode(13).latestOnset()).isEqualTo(Story.day(13));
		assertThat(notices(story, 12)).contains("advised.clinician-relapse", "advised.stay-away");
		assertThat(clearances(story, 12, 22)).containsOnly(REST);
		assertThat(story.criterion(20, "symptom-free").shuts()).as("seven by then").isFalse();
		assertThat(story.criterion(20, "least-days").observed()).containsExactly("7");
		assertThat(story.on(20).gate().earliest()).as("ten days from the new onset").isEqualTo(Story.day(23));
		assertThat(story.stage(23)).isEqualTo(1);
		assertThat(story.clearance(23)).isEqualTo(EASY_ONLY);
	}

	@Test
	void changesTheDeviceInMidEpisode() {
		Story story = Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE).well(2, 4).runs(3, 30);
		for (int day = 5; day <= 30; day++) {
			story.morning(day, (e) -> e.by(Method.WORN).rhr(47.0));
		}
		assertThat(story.stage(4)).isEqualTo(1);
		assertThat(story.on(5).rhr().flag()).as("another series is compared with nothing").isNull();
		assertThat(notices(story, 5)).contains("advised.method-changed");
		assertThat(story.clearance(5)).isEqualTo(EASY_ONLY);
		assertThat(story.stage(14)).as("such mornings do not count").isEqualTo(1);
		assertThat(story.episode(14).counted()).isEqualTo(2);
		assertThat(story.on(14).gate().earliest()).isNull();
		story.symptomsOnly(15);
		assertThat(story.on(15).mark()).isEqualTo(Mark.GOOD);
		assertThat(story.stage(19)).isEqualTo(1);
		assertThat(story.stage(20)).as("five more good ones counted").isEqualTo(2);
		assertThat(story.stage(27)).isEqualTo(3);
		assertThat(notices(story, 27)).as("shown for ever").contains("advised.symptoms-only");
	}

	@Test
	void correctsAnEntryOfThreeWeeksBack() {
		Story before = Story.ofAKnownAthlete().well(0);
		Story after = Story.ofAKnownAthlete()
			.well(0)
			.late(-21, 0, (e) -> e.rhr(63.0).symptom(Symptom.SORE_THROAT, Severity.MILD));
		assertThat(after.on(-21)).as("decided days stay").isEqualTo(before.on(-21));
		assertThat(before.on(0).rhr().n()).isEqualTo(28);
		assertThat(after.on(0).rhr().n()).as("out of the baseline").isEqualTo(27);
		assertThat(after.clearance(0)).isEqualTo(FULL_TRAINING);
		DayAssessment knownNow = Course
			.of(after.timeline().knownNow(), RuleBook.of(DefaultRules.ruleSet()), Story.day(-21))
			.get(7);
		assertThat(knownNow.day()).isEqualTo(Story.day(-21));
		assertThat(knownNow.clearance()).as("known now, it was High").isEqualTo(REST);
	}

	@Test
	void learnsOfAFeverOfThreeWeeksBack() {
		Story story = Story.ofAKnownAthlete().well(0, 3).late(-21, 0, Story.Entry::fever);
		assertThat(clearances(story, -21, -1)).as("decided days stay").containsOnly(FULL_TRAINING);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.episode(0).firstOnset()).isEqualTo(Story.day(-21));
		assertThat(decided(story, 0)).containsExactly(Decision.Kind.OPENED);
		assertThat(story.stage(1)).as("long well, but not on the day it opened").isEqualTo(1);
		assertThat(story.clearance(1)).isEqualTo(EASY_ONLY);
	}

	/** 2028-02-29 is day 761 of the stories. */
	@Test
	void countsALeapDayAsADay() {
		int leap = 761;
		assertThat(Story.day(leap)).isEqualTo(LocalDate.of(2028, 2, 29));
		Story quiet = Story.ofANewcomer().well(leap - 40, leap + 1);
		assertThat(quiet.on(leap).rhr().n()).isEqualTo(28);
		assertThat(quiet.on(leap + 1).rhr().n()).isEqualTo(28);
		Story cold = Story.ofANewcomer().well(leap - 40, leap - 2).sick(leap - 1, leap + 1, Symptom.SNEEZING, MILD);
		assertThat(clearances(cold, leap - 1, leap + 1)).containsExactly(EASY_ONLY, EASY_ONLY, REST);
		assertThat(cold.episode(leap + 1).firstOnset()).isEqualTo(LocalDate.of(2028, 2, 28));
		Story rest = Story.ofANewcomer().well(leap - 40, leap - 2).stricter(leap - 1, leap - 1, REST);
		assertThat(clearances(rest, leap - 1, leap + 1)).containsExactly(REST, REST, NOT_ASSESSED);
	}

	/**
	 * A man whose pulse stays 18 above his baseline: numbers never open the gate, and no
	 * working level is on offer.
	 */
	@Test
	void waitsForASlowReturnAtEighteenAbove() {
		Story story = Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
		for (int day = 2; day <= 60; day++) {
			story.rhr(day, 68);
		}
		assertThat(clearances(story, 2, 60)).containsOnly(REST);
		assertThat(story.stage(60)).isZero();
		assertThat(story.on(60).rhr().dev()).as("the baseline is held").isEqualTo(18);
		assertThat(story.criterion(60, "symptom-free").shuts()).isFalse();
		assertThat(story.criterion(60, "quiet").shuts()).isTrue();
		assertThat(story.on(60).gate().earliest()).isEqualTo(Story.day(61));
		assertThat(notices(story, 10)).doesNotContain("advised.clinician-long", "advised.stalled");
		assertThat(notices(story, 11)).contains("advised.clinician-long");
		assertThat(notices(story, 46)).doesNotContain("advised.stalled");
		assertThat(notices(story, 47)).as("twice 2 + 7 + 7 + 7 days").contains("advised.stalled");
		assertThat(story.on(40).level().against()).contains("too-far");
		story.rhr(61, 53);
		assertThat(story.stage(61)).as("the first quiet morning").isEqualTo(1);
		assertThat(story.clearance(61)).isEqualTo(EASY_ONLY);
	}

	@Test
	void hasFluAfterFiveDaysOfData() {
		Story story = Story.ofANewcomer().well(0, 4);
		for (int day = 5; day <= 7; day++) {
			story.morning(day, (e) -> e.rhr(72.0).fever());
		}
		story.well(8, 15);
		assertThat(clearances(story, 0, 4)).containsOnly(FULL_TRAINING);
		assertThat(clearances(story, 5, 14)).containsOnly(REST);
		assertThat(story.on(5).rhr().flag()).as("five readings make no baseline").isNull();
		assertThat(story.episode(5).tracked()).isFalse();
		assertThat(story.episode(6).path()).isEqualTo(PathName.THREE_WEEK);
		assertThat(story.episode(7).path()).isEqualTo(PathName.LONG);
		assertThat(notices(story, 7)).contains("advised.clinician-fever");
		assertThat(story.criterion(14, "quiet").state()).isEqualTo(CriterionState.NOT_APPLICABLE);
		assertThat(story.criterion(14, "symptom-free").observed()).containsExactly("7");
		assertThat(story.criterion(14, "least-days").shuts()).isTrue();
		assertThat(story.stage(15)).as("ten days from the onset").isEqualTo(1);
	}

	@Test
	void getsOverAStomachBug() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, 1, Symptom.VOMITING, Severity.MODERATE)
			.well(2, 12)
			.run(3, 5, 7, 8, 9);
		assertThat(story.episode(1).path()).isEqualTo(PathName.STOMACH);
		assertThat(clearances(story, 0, 10)).containsExactly(REST, REST, REST, EASY_ONLY, EASY_ONLY, EASY_ONLY,
				EASY_ONLY, FULL_TRAINING, FULL_TRAINING, FULL_TRAINING, FULL_TRAINING);
		assertThat(List.of(story.stage(2), story.stage(3), story.stage(5), story.stage(7), story.stage(9)))
			.containsExactly(0, 1, 2, 3, 3);
		assertThat(story.stage(10)).as("closed").isEqualTo(-1);
		assertThat(story.criterion(2, "least-days").shuts()).as("two days after the last").isTrue();
		assertThat(notices(story, 3)).contains("advised.stay-away-stomach");
		assertThat(notices(story, 4)).doesNotContain("advised.stay-away-stomach");
	}

	@Test
	void runsThroughKnownHayFever() {
		Story story = Story.ofAKnownAthlete()
			.known(0, Symptom.SNEEZING, Severity.MODERATE)
			.known(0, Symptom.RUNNY_NOSE, Severity.MODERATE);
		for (int day = 0; day <= 32; day++) {
			story.morning(day, (e) -> e.symptom(Symptom.SNEEZING, Severity.MODERATE).symptom(Symptom.RUNNY_NOSE, MILD));
		}
		assertThat(clearances(story, 0, 29)).containsOnly(FULL_TRAINING);
		assertThat(story.on(29).rhr().n()).as("such mornings are in the baseline").isEqualTo(28);
		assertThat(notices(story, 20)).isEmpty();
		assertThat(clearances(story, 30, 32)).as("noted for thirty days").containsExactly(EASY_ONLY, EASY_ONLY, REST);
		assertThat(story.episode(32).firstOnset()).isEqualTo(Story.day(30));
		Story renewed = Story.ofAKnownAthlete().known(0, Symptom.SNEEZING, MILD).known(29, Symptom.SNEEZING, MILD);
		assertThat(renewed.sick(29, 33, Symptom.SNEEZING, MILD).clearance(33)).isEqualTo(FULL_TRAINING);
		assertThat(renewed.sick(34, Symptom.SNEEZING, Severity.MODERATE).clearance(34)).as("worse")
			.isEqualTo(EASY_ONLY);
	}

	@Test
	void isSoreOnTheDayAfterAMarathon() {
		Story story = Story.ofAKnownAthlete().session(-1, 9.0, Intensity.RACE_PACE);
		story.add(new MorningEntry(Story.day(0), story.recorded(0, 6), Method.STRAP, Posture.LYING, 58.0, null, false,
				null, List.of(), false, FeverMedicine.NONE, true, Feels.ABLE, Severity.SEVERE,
				List.of(ContextTag.RACE, ContextTag.SHORT_SLEEP), null));
		story.rhr(1, 54).well(2);
		assertThat(story.on(0).rhr().flag()).isEqualTo(RhrFlag.RAISED);
		assertThat(clearances(story, 0, 2)).containsExactly(EASY_ONLY, EASY_ONLY, FULL_TRAINING);
		assertThat(story.reasons(0)).containsExactly("reason.above-the-line");
		assertThat(notices(story, 0)).as("tags annotate, they silence nothing")
			.containsExactly("advised.ask-symptoms", "advised.tags");
		assertThat(List.of(story.stage(0), story.stage(1), story.stage(2))).containsOnly(-1);
		assertThat(story.on(3).rhr().n()).as("soreness keeps no morning out").isEqualTo(28);
	}

	/** Four above for six weeks: told to the coach as a drift, no illness. */
	@Test
	void driftsFourAboveForSixWeeks() {
		Story story = Story.ofANewcomer();
		for (int day = -70; day < 0; day++) {
			story.rhr(day, 49 + Math.floorMod(day, 3));
		}
		for (int day = 0; day < 42; day++) {
			story.rhr(day, 53 + Math.floorMod(day, 3));
		}
		assertThat(story.clearance(0)).as("one within band").isEqualTo(FULL_TRAINING);
		assertThat(story.on(41).rhr().baseline()).isEqualTo(54);
		assertThat(story.on(13).rhr().drift()).isFalse();
		assertThat(notices(story, 41)).containsExactly("advised.drift");
		assertThat(story.clearance(41)).isEqualTo(FULL_TRAINING);
		assertThat(story.lived(41)).allMatch((day) -> day.state().episode() == null)
			.allMatch((day) -> day.clearance().compareTo(EASY_ONLY) >= 0);
		assertThat(clearances(story, 0, 41)).as("it holds back until the baseline follows").contains(EASY_ONLY);
		assertThat(clearances(story, 28, 41)).containsOnly(FULL_TRAINING);
	}

}
