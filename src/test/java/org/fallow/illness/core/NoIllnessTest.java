package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * A physician's word that a red flag was no illness, as the decision text has it under
 * "The return".
 */
class NoIllnessTest {

	private static Story chestPain() {
		return Story.ofAKnownAthlete().adult().sick(0, Symptom.CHEST_PAIN, Severity.SEVERE);
	}

	private static List<Decision.Kind> kinds(Story story, int day) {
		return story.on(day).decisions().stream().map(Decision::kind).toList();
	}

	@Test
	void closesTheEpisodeFromTheNextMorning() {
		Story story = chestPain().physician(1, 1, true).well(2);
		assertThat(story.stage(1)).isZero();
		assertThat(story.clearance(1)).isEqualTo(Clearance.REST);
		assertThat(story.stage(2)).isEqualTo(-1);
		assertThat(story.clearance(2)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(kinds(story, 2)).containsExactly(Decision.Kind.NO_ILLNESS);
	}

	@Test
	void closesOnASilentMorningWithoutClearingIt() {
		Story story = chestPain().physician(1, 1, true);
		assertThat(story.stage(2)).isEqualTo(-1);
		assertThat(story.clearance(2)).isIn(Clearance.NOT_ASSESSED, Clearance.REST);
	}

	@Test
	void saysOnTheDayThatItClosesTomorrow() {
		Story story = chestPain().physician(1, 1, true);
		assertThat(story.notices(1)).contains("advised.no-illness");
	}

	@Test
	void countsFromTheClearancesFirstDay() {
		Story story = chestPain();
		story.add(new IllnessEvent.Cleared(Story.day(3), null, story.recorded(1, 14), Clearance.FULL_TRAINING, "a", "b",
				null, new ClinicianWord(ClinicianWord.By.PHYSICIAN, Story.day(1), true, List.of())));
		story.well(2, 4);
		assertThat(story.clearance(2)).isEqualTo(Clearance.REFER);
		assertThat(story.stage(3)).isZero();
		assertThat(story.stage(4)).isEqualTo(-1);
	}

	@Test
	void keepsTheEpisodesDaysOutOfBaselines() {
		Story story = chestPain().physician(1, 1, true).well(2, 12);
		LocalDate closed = Story.day(2);
		assertThat(story.on(3).state().out()).anyMatch((range) -> range.to().equals(closed));
	}

	@ParameterizedTest
	@EnumSource(value = Symptom.class, names = { "FAINTING", "CONFUSION", "DARK_URINE", "COUGHING_BLOOD", "SEIZURE" })
	void neverClosesAfterTheGraveRedFlags(Symptom symptom) {
		Story story = Story.ofAKnownAthlete().adult().sick(0, symptom, Severity.SEVERE).physician(1, 1, true).well(2);
		assertThat(story.stage(2)).isZero();
		assertThat(story.notices(2)).contains("advised.no-illness-never");
	}

	@Test
	void looksAtEveryRedFlagOfAnEntry() {
		Story story = Story.ofAKnownAthlete()
			.adult()
			.morning(0,
					(e) -> e.symptom(Symptom.CHEST_PAIN, Severity.SEVERE).symptom(Symptom.FAINTING, Severity.SEVERE))
			.physician(1, 1, true)
			.well(2);
		assertThat(story.stage(2)).isZero();
	}

	@ParameterizedTest
	@EnumSource(value = AfterSession.class,
			names = { "FAINTING", "CONFUSION", "DARK_URINE", "COUGHING_BLOOD", "SEIZURE" })
	void neverClosesAfterTheGraveRedFlagsOfASession(AfterSession yes) {
		Story story = Story.ofAKnownAthlete().adult().well(0).session(0, 3.0, Intensity.EASY, yes);
		assertThat(story.clearance(0)).isEqualTo(Clearance.REFER);
		assertThat(story.physician(1, 1, true).well(2).stage(2)).isZero();
	}

	@ParameterizedTest
	@EnumSource(value = ReportKind.class,
			names = { "PNEUMONIA", "GLANDULAR_FEVER", "MYOCARDITIS", "PERICARDITIS", "HOSPITAL" })
	void neverClosesAfterANamedDiseaseNorAHospitalStay(ReportKind kind) {
		Story story = Story.ofAKnownAthlete().adult().report(0, 0, kind, 2).physician(1, 1, true).well(2);
		assertThat(story.stage(2)).isZero();
	}

	@Test
	void asksThatTheExaminationIsNotBeforeTheRedFlag() {
		Story story = chestPain().physician(1, -1, true).well(2);
		assertThat(story.stage(2)).isZero();
		assertThat(story.notices(1)).contains("advised.no-illness-not-examined");
		assertThat(chestPain().physician(1, 0, true).well(2).stage(2)).isEqualTo(-1);
	}

	@Test
	void keepsAnEpisodeThatHoldsAnIllness() {
		assertThat(chestPain().well(1).physician(2, 2, true).sick(3, Symptom.SNEEZING, Severity.MILD).stage(3))
			.isNotNegative();
		assertThat(chestPain().sick(1, Symptom.FATIGUE, Severity.MILD).physician(2, 2, true).well(3).stage(3))
			.isNotNegative();
		assertThat(chestPain().morning(1, (e) -> e.fever()).physician(2, 2, true).well(3).stage(3)).isNotNegative();
		assertThat(
				chestPain().morning(1, (e) -> e.medicine(FeverMedicine.OTHER)).physician(2, 2, true).well(3).stage(3))
			.isNotNegative();
		assertThat(chestPain().report(1, 0, ReportKind.OTHER, 1).physician(2, 2, true).well(3).stage(3))
			.isNotNegative();
		assertThat(chestPain().sick(1, Symptom.SMELL_LOSS, Severity.MILD).physician(2, 2, true).well(3).stage(3))
			.isNotNegative();
	}

	@Test
	void keepsAnEpisodeWhoseCorrectionTookTheIllnessBack() {
		Story story = chestPain().sick(1, Symptom.FATIGUE, Severity.MILD).late(1, 1, (e) -> e).physician(2, 2, true);
		assertThat(story.well(3).stage(3)).isNotNegative();
	}

	@Test
	void doesNotCloseUnderANewHoldNorByAnOlderWord() {
		assertThat(chestPain().physician(1, 1, true).sick(2, Symptom.CHEST_PAIN, Severity.SEVERE).clearance(2))
			.isEqualTo(Clearance.REFER);
		Story later = chestPain().physician(1, 1, true).cleared(1, null, Clearance.EASY_ONLY).well(2);
		assertThat(later.stage(2)).as("the latest recorded one is in force").isZero();
	}

	@Test
	void isSaidByAPhysicianWithFullTrainingAndNoLastDay() {
		ClinicianWord said = new ClinicianWord(ClinicianWord.By.PHYSICIAN, Story.day(0), true, List.of());
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new ClinicianWord(ClinicianWord.By.CLINICIAN, Story.day(0), true, List.of()));
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new ClinicianWord(ClinicianWord.By.PHYSICIAN, null, true, List.of()));
		assertThatIllegalArgumentException().isThrownBy(() -> cleared(null, Clearance.EASY_ONLY, said));
		assertThatIllegalArgumentException().isThrownBy(() -> cleared(Story.day(9), Clearance.FULL_TRAINING, said));
		assertThatIllegalArgumentException().isThrownBy(() -> cleared(null, Clearance.FULL_TRAINING,
				new ClinicianWord(ClinicianWord.By.PHYSICIAN, Story.day(1), true, List.of())));
	}

	private static IllnessEvent.Cleared cleared(LocalDate until, Clearance ceiling, ClinicianWord word) {
		return new IllnessEvent.Cleared(Story.day(0), until, new Story().recorded(0, 14), ceiling, "a", "b", null,
				word);
	}

}
