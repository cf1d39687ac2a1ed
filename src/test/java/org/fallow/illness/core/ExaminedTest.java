package org.fallow.illness.core;

import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** Red flags that a physician has examined, as the decision text has them. */
class ExaminedTest {

	private static final ReportedSymptom PALPITATIONS = ReportedSymptom.of(Symptom.PALPITATIONS, Severity.MODERATE);

	/** Palpitations on day 0, examined on day 1, found to be no illness. */
	private static Story examined() {
		return Story.ofAKnownAthlete()
			.adult()
			.sick(0, Symptom.PALPITATIONS, Severity.MODERATE)
			.physician(1, 1, true, PALPITATIONS);
	}

	@Test
	void allowsEasyRunningOnlyThatDayAndTellsTheCoach() {
		Story story = examined().well(2).sick(3, Symptom.PALPITATIONS, Severity.MODERATE).well(4);
		DayAssessment day = story.on(3);
		assertThat(day.clearance()).isEqualTo(Clearance.EASY_ONLY);
		assertThat(day.state().episode()).isNull();
		assertThat(story.reasons(3)).containsExactly("reason.examined");
		assertThat(story.notices(3)).contains("advised.examined");
		assertThat(story.clearance(4)).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void opensNoHoldOnAnyMorningForSomeoneWhoFeelsItEveryDay() {
		Story story = examined().sick(2, 89, Symptom.PALPITATIONS, Severity.MODERATE);
		List<DayAssessment> days = story.lived(89);
		assertThat(days.subList(days.size() - 88, days.size())).allMatch((d) -> d.clearance() == Clearance.EASY_ONLY)
			.allMatch((d) -> !d.holding());
	}

	@Test
	void holdsAgainAfterNinetyDays() {
		Story story = examined().sick(90, Symptom.PALPITATIONS, Severity.MODERATE);
		assertThat(story.clearance(90)).as("the ninetieth day").isEqualTo(Clearance.EASY_ONLY);
		Story late = examined().sick(91, Symptom.PALPITATIONS, Severity.MODERATE);
		assertThat(late.clearance(91)).isEqualTo(Clearance.REFER);
	}

	@Test
	void passesOverAMilderOneButNotAWorseOne() {
		assertThat(examined().well(2).sick(3, Symptom.PALPITATIONS, Severity.MILD).clearance(3))
			.isEqualTo(Clearance.EASY_ONLY);
		assertThat(examined().well(2).sick(3, Symptom.PALPITATIONS, Severity.SEVERE).clearance(3))
			.isEqualTo(Clearance.REFER);
	}

	@ParameterizedTest
	@EnumSource(value = Symptom.class, names = { "PALPITATIONS", "OTHER" }, mode = Mode.EXCLUDE)
	void passesItOverAloneOnly(Symptom other) {
		Story story = examined().well(2)
			.morning(3, (e) -> e.symptom(Symptom.PALPITATIONS, Severity.MILD).symptom(other, Severity.MILD));
		assertThat(story.clearance(3)).isEqualTo(Clearance.REFER);
	}

	@Test
	void holdsBesideAKnownSymptomOnlyIfThatIsWorse() {
		Story story = examined().well(2).known(2, Symptom.SNEEZING, Severity.MILD);
		story.morning(3,
				(e) -> e.symptom(Symptom.PALPITATIONS, Severity.MILD).symptom(Symptom.SNEEZING, Severity.MILD));
		assertThat(story.clearance(3)).isEqualTo(Clearance.EASY_ONLY);
		story.morning(4,
				(e) -> e.symptom(Symptom.PALPITATIONS, Severity.MILD).symptom(Symptom.SNEEZING, Severity.MODERATE));
		assertThat(story.clearance(4)).isEqualTo(Clearance.REFER);
	}

	@Test
	void holdsInAndAfterASession() {
		Story story = examined().well(2, 3).session(3, 3.0, Intensity.EASY, AfterSession.PALPITATIONS);
		assertThat(story.clearance(3)).isEqualTo(Clearance.REFER);
	}

	@Test
	void holdsInAnEpisodeAndOnTheDayOneOpens() {
		Story inside = examined().well(2)
			.sick(3, Symptom.FATIGUE, Severity.MILD)
			.sick(4, Symptom.PALPITATIONS, Severity.MILD);
		assertThat(inside.clearance(4)).isEqualTo(Clearance.REFER);
		Story opening = examined().well(2)
			.sick(3, Symptom.PALPITATIONS, Severity.MILD)
			.report(3, 3, ReportKind.ABOVE_NECK, 1);
		assertThat(opening.clearance(3)).isEqualTo(Clearance.REFER);
		assertThat(opening.on(3).clinic().examined()).isEmpty();
	}

	@Test
	void holdsWhenTheClearanceNoLongerCoversOrAnotherIsInForce() {
		Story story = examined().well(2, 3).cleared(3, null, Clearance.FULL_TRAINING);
		assertThat(story.sick(4, Symptom.PALPITATIONS, Severity.MILD).clearance(4)).isEqualTo(Clearance.REFER);
	}

	@Test
	void holdsOnAMorningThatIsEnteredLate() {
		Story story = examined().well(2).well(4).late(3, 4, (e) -> e.symptom(Symptom.PALPITATIONS, Severity.MILD));
		assertThat(story.clearance(4)).isEqualTo(Clearance.REFER);
	}

	@Test
	void holdsForARedFlagTickedBeforeTheClearance() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, Symptom.PALPITATIONS, Severity.MILD);
		assertThat(story.physician(0, 0, true, PALPITATIONS).stage(0)).isZero();
		assertThat(story.well(1).stage(1)).isEqualTo(-1);
	}

	/**
	 * Felt each morning, also the one on which <em>no illness</em> closes the episode: a
	 * tick that held then would need another clearance, whose closing morning has the
	 * next tick, and so on for ever.
	 */
	@Test
	void letsOutWhoFeelsItOnTheVeryMorningTheEpisodeCloses() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, Symptom.PALPITATIONS, Severity.MILD);
		story.physician(0, 0, true, PALPITATIONS);
		for (int day = 1; day <= 4; day++) {
			story.sick(day, Symptom.PALPITATIONS, Severity.MILD);
			assertThat(story.clearance(day)).as("day %s", day).isEqualTo(Clearance.EASY_ONLY);
			assertThat(story.stage(day)).as("day %s", day).isEqualTo(-1);
		}
		assertThat(story.well(5).clearance(5)).isEqualTo(Clearance.FULL_TRAINING);
	}

	/** Anything more on that morning, and it is inside: the hold stands. */
	@Test
	void holdsWithAnythingMoreOnTheMorningTheEpisodeWouldClose() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, Symptom.PALPITATIONS, Severity.MILD);
		story.physician(0, 0, true, PALPITATIONS)
			.morning(1, (e) -> e.symptom(Symptom.PALPITATIONS, Severity.MILD).symptom(Symptom.SNEEZING, Severity.MILD));
		assertThat(story.clearance(1)).isEqualTo(Clearance.REFER);
	}

	@ParameterizedTest
	@EnumSource(Symptom.class)
	void isSaidOfThreeRedFlagsOnly(Symptom symptom) {
		List<ReportedSymptom> named = List.of(ReportedSymptom.of(symptom, Severity.MILD));
		if (symptom == Symptom.PALPITATIONS || symptom == Symptom.CHEST_PAIN || symptom == Symptom.BREATHLESSNESS) {
			assertThat(new ClinicianWord(ClinicianWord.By.PHYSICIAN, Story.day(0), false, named).examined())
				.isEqualTo(named);
			return;
		}
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new ClinicianWord(ClinicianWord.By.PHYSICIAN, Story.day(0), false, named));
	}

}
