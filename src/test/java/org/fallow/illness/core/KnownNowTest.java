package org.fallow.illness.core;

import java.util.List;

import org.fallow.entry.Absence;
import org.fallow.entry.AbsenceKind;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.Fact;
import org.fallow.entry.HealthCondition;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.RuleBook;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * <em>Known now</em>: the replay in which each fact was known on the day it speaks of.
 * All facts here are of day 0 and became known on day 5; people's decisions stay on the
 * day they were made.
 */
class KnownNowTest {

	private static DayAssessment then(Story story, int day) {
		return day(story.timeline(), day);
	}

	private static DayAssessment now(Story story, int day) {
		return day(story.timeline().knownNow(), day);
	}

	private static DayAssessment day(Timeline timeline, int day) {
		List<DayAssessment> days = Course.of(timeline, RuleBook.of(DefaultRules.ruleSet()), Story.day(day));
		return days.get(days.size() - 1);
	}

	private static Recorded learned(Story story) {
		return story.recorded(5, 12);
	}

	private static Story well() {
		return Story.ofAKnownAthlete().well(0, 5);
	}

	@Test
	void holdsAnAthleteWithARedFlagAfterASessionThatWasLoggedLate() {
		Story story = well();
		story.add(new SessionLog("s", Story.day(0), learned(story), Activity.RUN, 40, 6.0, Intensity.STEADY,
				List.of(AfterSession.CHEST_PAIN), false, "later"));
		assertThat(then(story, 0).clearance()).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(now(story, 0).clearance()).isEqualTo(Clearance.REFER);
	}

	@Test
	void clearsNoIntensityInAnInjuryThatWasToldLate() {
		Story story = well();
		story.add(new Absence("a", Story.day(0), Story.day(2), learned(story), AbsenceKind.INJURY, "knee"));
		assertThat(then(story, 1).clearance()).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(now(story, 1).clearance()).isEqualTo(Clearance.NOT_ASSESSED);
		assertThat(now(story, 3).clearance()).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void comparesNoReadingsOverAChangeOfMedicine() {
		Story story = well();
		story.add(new MedicineChange(Story.day(0), learned(story), true));
		assertThat(then(story, 1).rhr().baseline()).isEqualTo(50);
		assertThat(now(story, 1).rhr().baseline()).as("another series").isNull();
	}

	@Test
	void sendsWhoHasAConditionToAClinician() {
		Story story = well().report(1, 1, ReportKind.ABOVE_NECK, 2);
		story.add(new HealthCondition(Story.day(0), learned(story), HealthCondition.Kind.HEART, true));
		assertThat(then(story, 1).notices()).extracting("code").doesNotContain("advised.clinician-condition");
		assertThat(now(story, 1).notices()).extracting("code").contains("advised.clinician-condition");
	}

	@Test
	void passesOverASymptomThatWasNotedAsKnownLater() {
		Story story = Story.ofAKnownAthlete().sick(0, 5, Symptom.SNEEZING, Severity.MILD);
		story.add(new KnownSymptom(Story.day(0), Story.day(29), learned(story), Symptom.SNEEZING, Severity.MILD));
		assertThat(then(story, 2).clearance()).isEqualTo(Clearance.REST);
		assertThat(now(story, 2).clearance()).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void opensOnTheOnsetOfAnIllnessReportedLater() {
		Story story = well().report(5, 0, ReportKind.FEVER, 4);
		assertThat(then(story, 0).state().episode()).isNull();
		assertThat(now(story, 0).state().episode()).isNotNull();
		assertThat(now(story, 0).clearance()).isEqualTo(Clearance.REST);
	}

	@Test
	void leavesPeoplesDecisionsOnTheDayTheyWereMade() {
		Story story = well();
		IllnessEvent.Hold hold = new IllnessEvent.Hold(Story.day(0), learned(story), "test");
		story.add(hold);
		assertThat(story.timeline().knownNow().facts()).contains(hold);
		assertThat(now(story, 4).clearance()).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(now(story, 5).clearance()).isEqualTo(Clearance.REFER);
	}

	/** Only the day a fact became known changes: what it says, and their order, stay. */
	@Test
	void changesNothingOfAFactButTheDayItBecameKnown() {
		Story story = Story.ofANewcomer();
		Recorded late = learned(story);
		Recorded own = new Recorded(late.at(), Story.day(0));
		story.add(new SessionLog("s", Story.day(0), late, Activity.OTHER, 40, 6.0, Intensity.STEADY,
				List.of(AfterSession.HEADACHE), true, "a"));
		story.add(new Absence("a", Story.day(0), Story.day(2), late, AbsenceKind.HOLIDAY, "b"));
		story.add(new MedicineChange(Story.day(0), late, true));
		story.add(new HealthCondition(Story.day(0), late, HealthCondition.Kind.LUNG, true));
		story.add(new KnownSymptom(Story.day(0), Story.day(9), late, Symptom.COUGH, Severity.MILD));
		story.add(new IllnessEvent.Report(Story.day(0), late, ReportKind.CHEST, 5, "c"));
		assertThat(story.timeline().knownNow().facts()).containsExactly(
				new SessionLog("s", Story.day(0), own, Activity.OTHER, 40, 6.0, Intensity.STEADY,
						List.of(AfterSession.HEADACHE), true, "a"),
				new Absence("a", Story.day(0), Story.day(2), own, AbsenceKind.HOLIDAY, "b"),
				new MedicineChange(Story.day(0), own, true),
				new HealthCondition(Story.day(0), own, HealthCondition.Kind.LUNG, true),
				new KnownSymptom(Story.day(0), Story.day(9), own, Symptom.COUGH, Severity.MILD),
				new IllnessEvent.Report(Story.day(0), own, ReportKind.CHEST, 5, "c"));
	}

	@Test
	void leavesFactsOfLaterDaysAsTheyWere() {
		Story story = Story.ofANewcomer().away(3, 5, AbsenceKind.HOLIDAY).well(1);
		List<Fact> facts = story.timeline().facts();
		assertThat(story.timeline().knownNow().facts()).isEqualTo(facts);
	}

}
