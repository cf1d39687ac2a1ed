package org.fallow.illness.core;

import org.fallow.entry.FeverMedicine;
import org.fallow.entry.KnownCause;
import org.fallow.entry.Symptom;
import org.fallow.rules.PathName;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.fallow.entry.Severity.MILD;
import static org.fallow.entry.Severity.MODERATE;
import static org.fallow.entry.Severity.SEVERE;
import static org.fallow.rules.Clearance.REST;

/** The rows of the table of paths, told with made-up days. */
class PathsTest {

	@Test
	void takesTheVaccinationPathForFeverOfADay() {
		Story story = Story.ofAKnownAthlete().adult().vaccinated(-1).morning(0, (e) -> e.fever()).well(1, 6).runs(1, 5);
		assertThat(path(story, 0)).isEqualTo(PathName.VACCINATION);
		assertThat(story.on(0).judgedFrom().vaccination()).isEqualTo(Story.day(-1));
		assertThat(story.notices(0)).contains("advised.stay-away");
		assertThat(story.stage(1)).as("fever the morning before").isZero();
		assertThat(story.stage(2)).isEqualTo(1);
		assertThat(story.stage(3)).isEqualTo(2);
		assertThat(story.stage(4)).isEqualTo(3);
		assertThat(story.stage(6)).as("closed").isEqualTo(-1);
	}

	@Test
	void takesItForWholeBodySymptomsAndMedicineAndNotForCatching() {
		Story story = Story.ofAKnownAthlete().adult().vaccinated(-2).sick(0, Symptom.MUSCLE_ACHES, SEVERE);
		story.morning(1, (e) -> e.medicine(FeverMedicine.ILLNESS).symptom(Symptom.FATIGUE, MILD));
		assertThat(path(story, 1)).isEqualTo(PathName.VACCINATION);
		assertThat(story.notices(0)).doesNotContain("advised.stay-away");
	}

	@Test
	void takesNoVaccinationThatWasNotedAfterTheFirstSickEntry() {
		assertThat(path(Story.ofAKnownAthlete().vaccinated(-1, 0, 9).morning(0, (e) -> e.fever()), 0))
			.isEqualTo(PathName.THREE_WEEK);
		assertThat(path(Story.ofAKnownAthlete().vaccinated(-1, 0, 5).morning(0, (e) -> e.fever()), 0))
			.isEqualTo(PathName.VACCINATION);
	}

	@Test
	void takesNoIllnessThatBeganTheSameDayOrAfterTwoDays() {
		assertThat(path(Story.ofAKnownAthlete().vaccinated(0, 0, 5).morning(0, (e) -> e.fever()), 0))
			.isEqualTo(PathName.THREE_WEEK);
		assertThat(path(Story.ofAKnownAthlete().vaccinated(-2).morning(0, (e) -> e.fever()), 0))
			.isEqualTo(PathName.VACCINATION);
		assertThat(path(Story.ofAKnownAthlete().vaccinated(-3).morning(0, (e) -> e.fever()), 0))
			.isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void takesNoThirdSickMorningNoHighFeverAndNothingElse() {
		Story third = Story.ofAKnownAthlete().vaccinated(-1).sick(0, 2, Symptom.FATIGUE, MILD);
		assertThat(path(third, 1)).isEqualTo(PathName.VACCINATION);
		assertThat(path(third, 2)).isEqualTo(PathName.THREE_WEEK);
		assertThat(path(Story.ofAKnownAthlete().vaccinated(-1).morning(0, (e) -> e.temperature(38.9)), 0))
			.isEqualTo(PathName.VACCINATION);
		assertThat(path(Story.ofAKnownAthlete().vaccinated(-1).morning(0, (e) -> e.temperature(39.0)), 0))
			.isEqualTo(PathName.THREE_WEEK);
		for (Symptom other : new Symptom[] { Symptom.SNEEZING, Symptom.VOMITING, Symptom.OTHER, Symptom.SMELL_LOSS }) {
			Story story = Story.ofAKnownAthlete()
				.vaccinated(-1)
				.morning(0, (e) -> e.fever().words(other, MILD, "words"));
			assertThat(path(story, 0)).as("%s", other).isEqualTo(PathName.THREE_WEEK);
		}
	}

	@Test
	void takesOneVaccinationInTwentyOneDays() {
		assertThat(path(Story.ofAKnownAthlete().vaccinated(-21).vaccinated(-1).morning(0, (e) -> e.fever()), 0))
			.isEqualTo(PathName.THREE_WEEK);
		assertThat(path(Story.ofAKnownAthlete().vaccinated(-22).vaccinated(-1).morning(0, (e) -> e.fever()), 0))
			.isEqualTo(PathName.VACCINATION);
	}

	@Test
	void takesCrampsAchesAndTirednessWithTheStomachOnTheSameMornings() {
		Story same = Story.ofAKnownAthlete()
			.morning(0,
					(e) -> e.symptom(Symptom.VOMITING, SEVERE)
						.symptom(Symptom.ABDOMINAL_PAIN, MODERATE)
						.symptom(Symptom.MUSCLE_ACHES, MILD)
						.symptom(Symptom.FATIGUE, MODERATE));
		assertThat(path(same, 0)).isEqualTo(PathName.STOMACH);
		assertThat(path(same.sick(1, Symptom.FATIGUE, MILD), 1)).as("the next morning").isEqualTo(PathName.THREE_WEEK);
		Story head = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.symptom(Symptom.VOMITING, MILD).symptom(Symptom.SEVERE_HEADACHE, MILD));
		assertThat(path(head, 0)).isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void takesCovidNoWorseThanAColdForThreeWeeksAndElseForTheLongPath() {
		Story cold = Story.ofAKnownAthlete()
			.report(0, 0, ReportKind.COVID, 3)
			.sick(0, 6, Symptom.SORE_THROAT, MODERATE);
		assertThat(path(cold, 6)).isEqualTo(PathName.THREE_WEEK);
		assertThat(path(cold.sick(7, Symptom.SORE_THROAT, MILD), 7)).isEqualTo(PathName.LONG);
		Story later = Story.ofAKnownAthlete().report(0, 0, ReportKind.COVID, 3);
		assertThat(path(later, 1)).as("nothing entered since").isEqualTo(PathName.THREE_WEEK);
		assertThat(path(later.sick(1, Symptom.RUNNY_NOSE, MILD), 1)).isEqualTo(PathName.THREE_WEEK);
		assertThat(path(later.well(2), 2)).as("told once").isEqualTo(PathName.THREE_WEEK);
		Story fever = Story.ofAKnownAthlete().report(0, 0, ReportKind.COVID, 3).morning(0, (e) -> e.fever());
		assertThat(path(fever, 0)).isEqualTo(PathName.LONG);
		Story tired = Story.ofAKnownAthlete().report(0, 0, ReportKind.COVID, 3).sick(0, Symptom.FATIGUE, MILD);
		assertThat(path(tired, 0)).isEqualTo(PathName.LONG);
	}

	/** Nothing says that it is no worse than a cold: the safer reading. */
	@Test
	void takesCovidOfWhichNoSymptomIsToldForTheLongPath() {
		Story entered = Story.ofAKnownAthlete().report(0, 0, ReportKind.COVID, null).well(1);
		assertThat(path(entered, 0)).as("no morning to tell it yet").isEqualTo(PathName.THREE_WEEK);
		assertThat(path(entered, 1)).isEqualTo(PathName.LONG);
		assertThat(path(entered.sick(2, Symptom.RUNNY_NOSE, MILD), 2)).as("upwards only").isEqualTo(PathName.LONG);
		Story before = Story.ofAKnownAthlete().well(0).report(0, 0, ReportKind.COVID, 2);
		assertThat(path(before, 0)).as("entered before the test was positive").isEqualTo(PathName.THREE_WEEK);
		assertThat(path(before.sick(1, Symptom.SNEEZING, MILD), 1)).isEqualTo(PathName.THREE_WEEK);
		Story smell = Story.ofAKnownAthlete().report(0, 0, ReportKind.COVID, 2).sick(0, Symptom.SMELL_LOSS, MILD);
		assertThat(path(smell.well(1), 1)).as("smell alone says nothing of a cold").isEqualTo(PathName.LONG);
		Story cold = Story.ofAKnownAthlete().report(0, 0, ReportKind.ABOVE_NECK, 2);
		assertThat(path(cold.report(1, 0, ReportKind.COVID, 2).well(2), 2)).isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void doesNotLengthenForALoneMildCough() {
		Story story = Story.ofAKnownAthlete().sick(0, 6, Symptom.SORE_THROAT, MILD).sick(7, 9, Symptom.COUGH, MILD);
		assertThat(path(story, 9)).isEqualTo(PathName.SHORT);
		assertThat(path(story.sick(10, Symptom.COUGH, MILD), 10)).as("over ten days").isEqualTo(PathName.LONG);
		Story both = Story.ofAKnownAthlete().sick(0, 6, Symptom.SORE_THROAT, MILD);
		both.morning(7, (e) -> e.symptom(Symptom.COUGH, MILD).symptom(Symptom.RUNNY_NOSE, MILD));
		assertThat(path(both, 7)).isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void restsForAsthmaWhileItIsWorseThanNotedThenGoesTheShortPath() {
		Story story = Story.ofAKnownAthlete()
			.known(-5, Symptom.WHEEZE, MILD, KnownCause.ASTHMA)
			.sick(0, Symptom.WHEEZE, MODERATE)
			.sick(1, Symptom.WHEEZE, MILD);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(path(story, 0)).isEqualTo(PathName.SHORT);
		assertThat(story.stage(1)).as("as noted again").isEqualTo(1);
		Story cold = Story.ofAKnownAthlete().known(-5, Symptom.WHEEZE, MILD, KnownCause.ASTHMA);
		cold.morning(0, (e) -> e.symptom(Symptom.WHEEZE, MODERATE).symptom(Symptom.RUNNY_NOSE, MILD));
		assertThat(path(cold, 0)).isEqualTo(PathName.THREE_WEEK);
		assertThat(path(Story.ofAKnownAthlete().sick(0, Symptom.WHEEZE, MODERATE), 0)).isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void lengthensTheVaccinationPathToThreeWeeksInARelapse() {
		assertThat(Draft.longer(PathName.VACCINATION)).isEqualTo(PathName.THREE_WEEK);
		assertThat(Draft.longer(PathName.THREE_WEEK)).isEqualTo(PathName.LONG);
	}

	private static PathName path(Story story, int day) {
		return story.episode(day).path();
	}

}
