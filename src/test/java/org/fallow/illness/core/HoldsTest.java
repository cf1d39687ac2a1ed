package org.fallow.illness.core;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** Holds and clearances, as the decision text has them under "The return". */
class HoldsTest {

	private static Story adult() {
		return Story.ofAKnownAthlete().adult();
	}

	@ParameterizedTest
	@CsvSource({ "0, REFER", "1, REFER", "14, REFER", "15, REST" })
	void refersWheezeWithinTwoWeeksOfAVaccination(int days, Clearance clearance) {
		Story story = adult().morning(0,
				(e) -> (days == 0) ? e.tagged(ContextTag.VACCINATION).symptom(Symptom.WHEEZE, Severity.MILD)
						: e.tagged(ContextTag.VACCINATION));
		if (days > 0) {
			story.sick(days, Symptom.WHEEZE, Severity.MILD);
		}
		assertThat(story.clearance(days)).isEqualTo(clearance);
	}

	@Test
	void refersWhenTheVaccinationIsNotedAfterTheWheeze() {
		Story story = adult().sick(3, Symptom.WHEEZE, Severity.MILD)
			.late(1, 4, (e) -> e.tagged(ContextTag.VACCINATION))
			.well(4);
		assertThat(story.clearance(3)).isEqualTo(Clearance.REST);
		assertThat(story.clearance(4)).isEqualTo(Clearance.REFER);
		assertThat(story.on(4).clinic().standing().get(0).cause()).isEqualTo("WHEEZE_AFTER_VACCINATION");
	}

	@Test
	void refersAKnownWheezeToo() {
		Story story = adult().known(0, Symptom.WHEEZE, Severity.MILD)
			.morning(1, (e) -> e.tagged(ContextTag.VACCINATION))
			.sick(2, Symptom.WHEEZE, Severity.MILD);
		assertThat(story.clearance(2)).isEqualTo(Clearance.REFER);
	}

	@ParameterizedTest
	@EnumSource(value = ReportKind.class,
			names = { "PNEUMONIA", "GLANDULAR_FEVER", "MYOCARDITIS", "PERICARDITIS", "HOSPITAL" })
	void putsNamedDiseasesAndAHospitalStayOnTheLongPath(ReportKind kind) {
		assertThat(adult().report(0, 0, kind, 2).episode(0).path()).isEqualTo(PathName.LONG);
		Story late = adult().sick(0, Symptom.RUNNY_NOSE, Severity.MILD).report(0, 0, ReportKind.ABOVE_NECK, 1);
		assertThat(late.episode(0).path()).isEqualTo(PathName.SHORT);
		assertThat(late.well(1, 3).report(3, 3, kind, 2).episode(3).path()).isEqualTo(PathName.LONG);
	}

	@Test
	void countsMorningsUnderAHoldInNoStageButInTheRowAndTheLeastDays() {
		Story story = adult().hold(0).well(1, 3).cleared(3, null, Clearance.FULL_TRAINING).well(4);
		assertThat(story.stage(3)).as("the clearance sets ill, no gate that day").isZero();
		assertThat(story.on(3).opened()).isNull();
		assertThat(story.criterion(3, "symptom-free").observed()).containsExactly("3");
		assertThat(story.stage(4)).isEqualTo(1);
	}

	@Test
	void countsNothingInAStageUnderAHold() {
		Story story = adult().hold(0).cleared(0, 5, Clearance.FULL_TRAINING).well(1, 9);
		assertThat(story.episode(5).counted()).isPositive();
		assertThat(story.clearance(6)).as("the hold stands again").isEqualTo(Clearance.REFER);
		assertThat(story.episode(9).counted()).isEqualTo(story.episode(5).counted());
		story.cleared(9, null, Clearance.FULL_TRAINING);
		assertThat(story.stage(9)).isZero();
		assertThat(story.on(9).opened()).isNull();
	}

	@Test
	void endsWhatTheAthleteToldAfterFourteenDaysAtTheLatest() {
		Story story = adult().sick(0, Symptom.CHEST_PAIN, Severity.SEVERE).told(1, 14, Clearance.EASY_ONLY).well(1, 15);
		assertThat(story.clearance(14)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.reasons(14)).contains("reason.told-ceiling");
		assertThat(story.clearance(15)).isEqualTo(Clearance.REFER);
		assertThatIllegalArgumentException().isThrownBy(() -> adult().told(1, 15, Clearance.EASY_ONLY));
		assertThatIllegalArgumentException().isThrownBy(() -> adult().told(1, 2, Clearance.FULL_TRAINING));
	}

	@Test
	void takesACoachsWordOfTodayWhereTheEntryDoesNotSay() {
		Story story = adult().sick(0, Symptom.RUNNY_NOSE, Severity.MILD)
			.report(0, 0, ReportKind.ABOVE_NECK, 1)
			.well(1)
			.morning(2, (e) -> e.feels(null));
		assertThat(story.stage(2)).isEqualTo(1);
		Story silent = adult().sick(0, Symptom.RUNNY_NOSE, Severity.MILD)
			.report(0, 0, ReportKind.ABOVE_NECK, 1)
			.morning(1, (e) -> e.feels(null));
		assertThat(silent.stage(1)).isZero();
		assertThat(silent.saidToday(0, true, false).stage(1)).as("of another day").isZero();
		assertThat(silent.saidToday(1, true, false).stage(1)).isEqualTo(1);
	}

	@Test
	void takesNoCoachsWordAgainstTheEntryNorForAMinor() {
		Story unwell = adult().report(0, 0, ReportKind.ABOVE_NECK, 1).morning(1, (e) -> e.feels(Feels.UNWELL));
		assertThat(unwell.saidToday(1, true, true).stage(1)).isZero();
		Story minor = Story.ofAKnownAthlete().report(0, 0, ReportKind.ABOVE_NECK, 1).morning(1, (e) -> e.feels(null));
		assertThat(minor.saidToday(1, true, true).stage(1)).isZero();
	}

	@Test
	void takesACoachsWordOnEatingOnTheStomachPath() {
		Story story = adult().sick(0, Symptom.VOMITING, Severity.MILD)
			.morning(1, (e) -> e.eating(null))
			.morning(2, (e) -> e.eating(null));
		assertThat(story.stage(2)).isZero();
		assertThat(story.saidToday(2, false, true).stage(2)).isEqualTo(1);
	}

}
