package org.fallow.illness.core;

import org.fallow.entry.AfterSession;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Recorded;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What people are told, with its figures: reasons, causes of holds, and when a clinician
 * is advised.
 */
class ToldTest {

	private static final Severity MILD = Severity.MILD;

	@ParameterizedTest
	@CsvSource({ "39.5, true", "39.4, false" })
	void advisesAClinicianFromThirtyNineAndAHalf(double celsius, boolean advised) {
		Story story = Story.ofAKnownAthlete().morning(0, (e) -> e.temperature(celsius));
		assertThat(story.notices(0).contains("advised.clinician-fever")).isEqualTo(advised);
	}

	@Test
	void advisesAClinicianForFeverOnThreeDaysNotForThreeDaysIll() {
		Story two = Story.ofAKnownAthlete()
			.morning(0, Story.Entry::fever)
			.morning(1, Story.Entry::fever)
			.sick(2, Symptom.FATIGUE, MILD);
		assertThat(two.notices(2)).doesNotContain("advised.clinician-fever");
		Story three = Story.ofAKnownAthlete();
		for (int day = 0; day <= 2; day++) {
			three.morning(day, Story.Entry::fever);
		}
		assertThat(three.notices(2)).contains("advised.clinician-fever");
	}

	@Test
	void callsNothingWorseThatWasNeverBetter() {
		Story ill = Story.ofAKnownAthlete().sick(0, 2, Symptom.FATIGUE, MILD);
		assertThat(ill.notices(2)).doesNotContain("advised.clinician-relapse");
		Story reported = Story.ofAKnownAthlete()
			.well(0)
			.report(0, 0, ReportKind.OTHER, 3)
			.sick(1, Symptom.FATIGUE, MILD);
		assertThat(reported.notices(1)).as("ill on the day of the report").doesNotContain("advised.clinician-relapse");
	}

	@Test
	void keepsNobodyAwayOfWhomNoSymptomIsKnown() {
		assertThat(Story.ofANewcomer().run(0).notices(0)).doesNotContain("advised.stay-away");
		assertThat(Story.ofAKnownAthlete().notices(0)).doesNotContain("advised.stay-away");
	}

	@Test
	void namesTheHoursToStayAwayAfterAStomachBug() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.VOMITING, MILD);
		assertThat(story.on(0).notices()).contains(Message.of("advised.stay-away-stomach", 48));
	}

	/** Seven well mornings lead out on day 27; day 29 is the first after four weeks. */
	@Test
	void lightensTheWayBackFromMoreThanFourWeeksOn() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 20, Symptom.FATIGUE, MILD).well(21, 29);
		assertThat(story.stage(27)).isEqualTo(1);
		assertThat(story.notices(28)).doesNotContain("advised.long-away");
		assertThat(story.notices(29)).contains("advised.long-away");
	}

	@Test
	void asksForAWordAboutASymptomThatLastsBesidesAKnownOne() {
		Story story = Story.ofAKnownAthlete().adult().known(0, Symptom.SNEEZING, MILD);
		for (int day = 0; day <= 11; day++) {
			story.morning(day, (e) -> e.symptom(Symptom.SNEEZING, MILD).symptom(Symptom.SMELL_LOSS, MILD));
		}
		assertThat(story.notices(11)).contains("advised.clinician-lasting");
		Story known = Story.ofAKnownAthlete()
			.adult()
			.known(0, Symptom.SNEEZING, MILD)
			.sick(0, 11, Symptom.SNEEZING, MILD);
		assertThat(known.notices(11)).doesNotContain("advised.clinician-lasting");
	}

	@Test
	void saysThatAReadingIsUnusuallyLow() {
		assertThat(Story.ofAKnownAthlete().rhr(0, 44).notices(0)).contains("advised.low");
		assertThat(Story.ofAKnownAthlete().rhr(0, 45).notices(0)).doesNotContain("advised.low");
	}

	@Test
	void speaksOfNoDriftWithoutABaseline() {
		assertThat(Story.ofANewcomer().well(0, 3).notices(3)).doesNotContain("advised.drift");
	}

	@Test
	void namesFeverAndItsMedicineAmongTheReasons() {
		assertThat(Story.ofAKnownAthlete().morning(0, Story.Entry::fever).reasons(0)).contains("reason.fever");
		Story medicine = Story.ofAKnownAthlete().morning(0, (e) -> e.medicine(FeverMedicine.ILLNESS));
		assertThat(medicine.reasons(0)).contains("reason.fever-medicine-illness");
	}

	@Test
	void namesTheDeviationInItsReasons() {
		assertThat(Story.ofAKnownAthlete().rhr(0, 58).on(0).reasons())
			.containsExactly(Message.of("reason.above-the-line", "8.0", "4.0", "4.0"));
		assertThat(Story.ofAKnownAthlete().rhr(0, 62.5).on(0).reasons()).first()
			.isEqualTo(Message.of("reason.rhr-high", "12.5"));
	}

	@Test
	void namesTheCauseOfAHold() {
		assertThat(cause(Story.ofAKnownAthlete().sick(0, Symptom.CHEST_PAIN, MILD))).isEqualTo("CHEST_PAIN");
		assertThat(cause(
				Story.ofAKnownAthlete().session(0, 3.0, Intensity.EASY, AfterSession.HEADACHE, AfterSession.FAINTING)))
			.isEqualTo("FAINTING");
		assertThat(cause(Story.ofAKnownAthlete().report(0, 0, ReportKind.MYOCARDITIS, 2))).isEqualTo("MYOCARDITIS");
		assertThat(cause(Story.ofAKnownAthlete().hold(0))).isEqualTo("BY_HAND");
		Story asked = Story.ofAKnownAthlete();
		asked.add(new IllnessEvent.Hold(Story.day(0), asked.recorded(0, 9), "DARK_URINE"));
		assertThat(cause(asked)).isEqualTo("DARK_URINE");
	}

	private static String cause(Story story) {
		return story.on(0).state().holds().get(0).cause();
	}

	/** Of two of one instant, the one that was recorded after the other. */
	@Test
	void takesTheClearanceRecordedLast() {
		Story story = Story.ofAKnownAthlete().well(0);
		Recorded both = story.recorded(0, 14);
		for (Clearance ceiling : new Clearance[] { Clearance.FULL_TRAINING, Clearance.EASY_ONLY }) {
			story.add(new IllnessEvent.Cleared(Story.day(0), null, both, ceiling, "a clinician", "physician", null));
		}
		assertThat(story.clearance(0)).isEqualTo(Clearance.EASY_ONLY);
	}

	@Test
	void saysWithFiguresWhatSpeaksAgainstAWorkingLevel() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 1, Symptom.FATIGUE, MILD);
		for (int day = 2; day <= 15; day++) {
			story.rhr(day, 57);
		}
		assertThat(story.on(15).level().refusals())
			.containsExactly(Message.of("level.too-few", 13, 14, 15, 21, 14, 10.0));
	}

}
