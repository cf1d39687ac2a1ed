package org.fallow.illness.core;

import org.fallow.entry.AbsenceKind;
import org.fallow.entry.AfterSession;
import org.fallow.entry.HealthCondition;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Intensity;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What people are told besides the clearance. None of it opens or shuts anything.
 */
class AdviceTest {

	@Test
	void namesAGuardianForMinorsAndAClinicianOnTheLongPath() {
		Story cold = Story.ofAKnownAthlete().report(0, 0, ReportKind.ABOVE_NECK, 2).well(1);
		assertThat(cold.notices(1)).contains("advised.guardian").doesNotContain("advised.guardian-and-clinician");
		Story covid = Story.ofAKnownAthlete().report(0, 0, ReportKind.COVID, 8).well(1);
		assertThat(covid.notices(1)).contains("advised.guardian-and-clinician").doesNotContain("advised.guardian");
		assertThat(Story.ofAKnownAthlete().well(0).notices(0)).doesNotContain("advised.guardian");
	}

	@Test
	void namesNoGuardianForAdults() {
		Story covid = Story.ofAKnownAthlete().adult().report(0, 0, ReportKind.COVID, 8).well(1);
		assertThat(covid.notices(1)).noneMatch((code) -> code.startsWith("advised.guardian"));
	}

	@Test
	void namesAClinicianToMinorsWheneverOneIsAdvised() {
		Story story = Story.ofAKnownAthlete()
			.condition(-5, HealthCondition.Kind.LUNG, true)
			.report(0, 0, ReportKind.ABOVE_NECK, 2);
		assertThat(story.notices(0)).contains("advised.clinician-condition", "advised.guardian-and-clinician");
	}

	@Test
	void sendsPeopleWithAConditionToAClinicianInAnyIllness() {
		Story story = Story.ofAKnownAthlete()
			.adult()
			.condition(-9, HealthCondition.Kind.PREGNANCY, true)
			.condition(3, HealthCondition.Kind.PREGNANCY, false)
			.well(-1)
			.sick(0, Symptom.FATIGUE, Severity.MILD)
			.well(1, 3);
		assertThat(story.notices(-1)).doesNotContain("advised.clinician-condition");
		assertThat(story.notices(0)).contains("advised.clinician-condition");
		assertThat(story.notices(3)).doesNotContain("advised.clinician-condition");
	}

	@Test
	void asksToStayAwayWhileSymptomsShow() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.RUNNY_NOSE, Severity.MILD).well(2);
		assertThat(story.notices(0)).contains("advised.stay-away");
		assertThat(story.notices(1)).as("no entry since").contains("advised.stay-away");
		assertThat(story.notices(2)).doesNotContain("advised.stay-away");
	}

	@Test
	void doesNotCallHayFeverCatching() {
		Story story = Story.ofAKnownAthlete()
			.known(0, Symptom.SNEEZING, Severity.MODERATE)
			.sick(0, Symptom.SNEEZING, Severity.MILD);
		assertThat(story.notices(0)).doesNotContain("advised.stay-away");
	}

	/** 48 hours after the last time: from memory, advice of public health services. */
	@Test
	void asksToStayAwayTwoDaysAfterAStomachBug() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.VOMITING, Severity.MILD).well(1, 3);
		assertThat(story.notices(2)).contains("advised.stay-away-stomach").doesNotContain("advised.stay-away");
		assertThat(story.notices(3)).doesNotContain("advised.stay-away-stomach");
	}

	@Test
	void asksForAWordWithAClinicianWhereASymptomLasts() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 11, Symptom.SMELL_LOSS, Severity.MILD);
		assertThat(story.notices(10)).doesNotContain("advised.clinician-lasting");
		assertThat(story.notices(11)).contains("advised.clinician-lasting");
	}

	/** A sore throat with swollen glands or fatigue over five days, both ends counted. */
	@Test
	void asksForAWordWithAClinicianWhereASoreThroatWithSwollenGlandsLasts() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 3, Symptom.SORE_THROAT, Severity.MILD);
		story
			.morning(4,
					(e) -> e.symptom(Symptom.SORE_THROAT, Severity.MILD)
						.symptom(Symptom.SWOLLEN_GLANDS, Severity.MILD))
			.sick(5, Symptom.SORE_THROAT, Severity.MILD)
			.well(6);
		assertThat(story.notices(4)).doesNotContain("advised.clinician-throat");
		assertThat(story.notices(5)).contains("advised.clinician-throat");
		assertThat(story.notices(6)).doesNotContain("advised.clinician-throat");
		Story throat = Story.ofAKnownAthlete().adult().sick(0, 6, Symptom.SORE_THROAT, Severity.MILD);
		assertThat(throat.notices(6)).doesNotContain("advised.clinician-throat");
		Story tired = Story.ofAKnownAthlete().adult().sick(0, 6, Symptom.FATIGUE, Severity.MILD);
		assertThat(tired.notices(6)).doesNotContain("advised.clinician-throat");
	}

	@Test
	void asksForAWordWithAClinicianWhereAComplaintAfterSessionsComesBack() {
		Story story = Story.ofAKnownAthlete()
			.adult()
			.well(0, 8)
			.session(0, 3.0, Intensity.EASY, AfterSession.HEADACHE)
			.session(1, 3.0, Intensity.EASY, AfterSession.OTHER);
		assertThat(story.notices(1)).doesNotContain("advised.clinician-after-session");
		story.session(2, 3.0, Intensity.EASY, AfterSession.HEADACHE);
		assertThat(story.notices(2)).contains("advised.clinician-after-session");
		assertThat(story.notices(7)).as("a week after the first").doesNotContain("advised.clinician-after-session");
	}

	@Test
	void asksForAWordWithAClinicianWhereItGetsWorseAfterBetter() {
		Story story = Story.ofAKnownAthlete()
			.adult()
			.sick(0, Symptom.FATIGUE, Severity.MILD)
			.well(1)
			.sick(2, Symptom.FATIGUE, Severity.MILD);
		assertThat(story.notices(0)).doesNotContain("advised.clinician-relapse");
		assertThat(story.notices(2)).contains("advised.clinician-relapse");
	}

	@Test
	void lightensTheWayBackAfterMoreThanFourWeeksAway() {
		Story away = Story.ofAKnownAthlete().away(-40, -12, AbsenceKind.HOLIDAY).well(-12, 3);
		assertThat(away.notices(-12)).doesNotContain("advised.long-away");
		assertThat(away.notices(-11)).contains("advised.long-away");
		assertThat(away.notices(3)).doesNotContain("advised.long-away");
		Story fourWeeks = Story.ofAKnownAthlete().away(-39, -12, AbsenceKind.HOLIDAY).well(-11);
		assertThat(fourWeeks.notices(-11)).doesNotContain("advised.long-away");
	}

	@Test
	void lightensTheWayBackAfterALongIllness() {
		Story ill = Story.ofAKnownAthlete()
			.adult()
			.sick(0, 27, Symptom.FATIGUE, Severity.MILD)
			.well(28, 34)
			.runs(34, 34);
		assertThat(ill.notices(33)).doesNotContain("advised.long-away");
		assertThat(ill.stage(34)).isEqualTo(1);
		assertThat(ill.notices(34)).contains("advised.long-away");
	}

}
