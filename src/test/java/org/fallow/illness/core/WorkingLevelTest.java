package org.fallow.illness.core;

import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The working level of the decision text: where numbers alone keep the gate shut for
 * long, a coach may set one on a clinician's word. The athlete is ill with fatigue on
 * days 0 and 1; the first symptom-free morning is day 2, the 21st is day 22.
 */
class WorkingLevelTest {

	private static Story slow(double bpm, int to) {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 1, Symptom.FATIGUE, Severity.MILD);
		for (int day = 2; day <= to; day++) {
			story.rhr(day, bpm);
		}
		return story;
	}

	@Test
	void isOfferedOnTheTwentyFirstSymptomFreeMorning() {
		Story story = slow(57, 22);
		assertThat(story.on(21).level().against()).containsExactly("too-few");
		LevelOffer offer = story.on(22).level();
		assertThat(offer.against()).isEmpty();
		assertThat(offer.bpm()).isEqualTo(57);
		assertThat(offer.own()).isEqualTo(50);
		assertThat(story.notices(22)).contains("advised.working-level-possible");
	}

	/**
	 * The first two of these are not shut by numbers alone, for days are still missing.
	 */
	@Test
	void countsOnlyMorningsShutByNumbersAlone() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 1, Symptom.FATIGUE, Severity.MILD);
		for (int day = 2; day <= 24; day++) {
			story.morning(day, (e) -> e.rhr(57.0).feels(null));
		}
		assertThat(story.on(24).level().shut()).isZero();
		assertThat(story.on(24).level().against()).containsExactly("too-few");
	}

	@Test
	void needsFifteenShutMorningsOfTheLatestTwentyOne() {
		Story story = slow(57, 1);
		for (int day = 2; day <= 23; day++) {
			double bpm = (day <= 7) ? 50 : 57;
			Feels feels = (day <= 8) ? null : Feels.ABLE;
			story.morning(day, (e) -> e.rhr(bpm).feels(feels));
		}
		assertThat(story.on(22).level().shut()).isEqualTo(14);
		assertThat(story.on(22).level().of()).isEqualTo(21);
		assertThat(story.on(22).level().against()).containsExactly("too-few");
		assertThat(story.on(23).level().shut()).isEqualTo(15);
		assertThat(story.on(23).level().against()).isEmpty();
	}

	@Test
	void worksFromTheNextMorningOnAndOpensTheGate() {
		Story story = slow(57, 25).workingLevel(22);
		assertThat(story.stage(22)).isZero();
		assertThat(story.on(22).decisions()).extracting(Decision::kind).contains(Decision.Kind.WORKING_LEVEL);
		DayAssessment next = story.on(23);
		assertThat(next.rhr().dev()).isZero();
		assertThat(next.rhr().own()).isEqualTo(50);
		assertThat(next.rhr().working()).isEqualTo(new Working(Story.day(23), 57));
		assertThat(story.stage(23)).isEqualTo(1);
		assertThat(story.notices(23)).contains("advised.working-level");
	}

	@Test
	void doesNothingWhereSomethingSpeaksAgainstIt() {
		Story story = slow(57, 25).workingLevel(20);
		assertThat(story.on(21).rhr().working()).isNull();
		assertThat(story.on(25).rhr().dev()).isEqualTo(7);
		assertThat(story.stage(25)).isZero();
	}

	@ParameterizedTest
	@CsvSource({ "9.5, 0", "10, 1", "18, 1" })
	void isNeverOfferedFromTenAboveTheOwnBaseline(double above, int refusals) {
		LevelOffer offer = slow(50 + above, 22).on(22).level();
		assertThat(offer.against().stream().filter("too-far"::equals)).hasSize(refusals);
	}

	@Test
	void isNeverOfferedBecauseOfOneCalmMorningAmongFarOnes() {
		Story story = slow(62, 21).rhr(22, 55);
		assertThat(story.on(22).level().against()).contains("too-far");
	}

	@Test
	void isNotForMinorsNorForPeopleWithoutABirthDate() {
		assertThat(slow(57, 22).adultFrom(null).on(22).level().against()).containsExactly("minor");
		assertThat(slow(57, 22).adultFrom(Story.day(23)).on(22).level().against()).containsExactly("minor");
		assertThat(slow(57, 22).adultFrom(Story.day(22)).on(22).level().against()).isEmpty();
	}

	@Test
	void isNotOfferedUnderAHold() {
		assertThat(slow(57, 22).hold(22).on(22).level().against()).contains("hold");
	}

	@Test
	void isNotOfferedOnAMorningWithSymptomsOrWithoutAnEntry() {
		assertThat(slow(57, 22).sick(23, Symptom.SNEEZING, Severity.MILD).on(23).level().against())
			.contains("not-free");
		assertThat(slow(57, 22).on(23).level().against()).contains("not-free");
	}

	@Test
	void isNotOfferedWhereReadingsAreNotAboveTheOwnBaseline() {
		assertThat(slow(50, 16).on(16).level().against()).containsExactly("too-few", "not-above");
	}

	@Test
	void isNotOfferedWhereRestingHeartRateIsNotTracked() {
		Story newcomer = Story.ofANewcomer().adult().sick(0, 1, Symptom.FATIGUE, Severity.MILD).well(2);
		assertThat(newcomer.on(2).level()).isNull();
		Story changed = slow(57, 21).morning(22, (e) -> e.by(Method.WORN)).symptomsOnly(22);
		assertThat(changed.on(22).level()).isNull();
	}

	@Test
	void takesReadingsOfTheEpisodesOwnSeriesOnly() {
		Story story = slow(57, 12);
		for (int day = 13; day <= 24; day++) {
			story.morning(day, (e) -> e.rhr(40.0).by(Method.WORN));
		}
		assertThat(story.on(24).level().bpm()).isNull();
	}

	/** A reading ten above the own baseline is judged by the own baseline. */
	@Test
	void neverHidesAHighMorning() {
		Story story = slow(57, 22).workingLevel(22).rhr(23, 57).rhr(24, 60);
		DayAssessment high = story.on(24);
		assertThat(high.rhr().dev()).isEqualTo(10);
		assertThat(high.clearance()).isEqualTo(Clearance.REST);
	}

	@Test
	void endsWithFeverAHoldOrARelapse() {
		Story fever = slow(57, 22).workingLevel(22).rhr(23, 57).sick(24, Symptom.FEVERISH, Severity.MILD).rhr(25, 57);
		assertThat(fever.on(24).rhr().working()).isNull();
		assertThat(fever.on(25).rhr().dev()).isEqualTo(7);
		Story hold = slow(57, 22).workingLevel(22)
			.rhr(23, 57)
			.hold(24)
			.rhr(24, 57)
			.cleared(25, null, Clearance.FULL_TRAINING)
			.rhr(25, 57);
		assertThat(hold.on(24).rhr().working()).isNull();
		assertThat(hold.on(25).rhr().working()).isNull();
		Story relapse = slow(57, 22).workingLevel(22).rhr(23, 57).sick(24, Symptom.FATIGUE, Severity.MILD).rhr(25, 57);
		assertThat(relapse.on(25).rhr().working()).isNull();
		assertThat(relapse.on(25).level().of()).isEqualTo(1);
	}

	/** It goes on after the close until seven newer readings made a new baseline. */
	@Test
	void isHeldWithTheBaselineAfterTheClose() {
		Story story = slow(57, 60).workingLevel(22).runs(23, 60);
		int closed = 23;
		while (story.stage(closed) >= 0) {
			closed++;
		}
		assertThat(story.on(closed + 1).rhr().working()).isNotNull();
		assertThat(story.on(closed + 1).rhr().dev()).isZero();
		assertThat(story.clearance(closed + 1)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(story.on(closed + 8).rhr().working()).isNull();
	}

	/** A new illness begins with the athlete's own baseline again. */
	@Test
	void doesNotPassOnToTheNextIllness() {
		Story story = slow(57, 47).workingLevel(22).runs(23, 47);
		int closed = 23;
		while (story.stage(closed) >= 0) {
			closed++;
		}
		story.sick(closed + 2, Symptom.FATIGUE, Severity.MILD);
		assertThat(story.on(closed + 2).rhr().working()).isNull();
		assertThat(story.episode(closed + 2).held().working()).isNull();
	}

	@Test
	void saysWhatSpeaksAgainstASecondOne() {
		Story story = slow(57, 23).workingLevel(22);
		assertThat(story.on(22).level().against()).as("set today").containsExactly("in-force");
		assertThat(story.on(23).level().against()).contains("in-force");
	}

	@Test
	void isNotOfferedNearFeverNorFeverMedicine() {
		Story medicine = slow(57, 22).morning(23, (e) -> e.rhr(57.0).medicine(FeverMedicine.OTHER)).rhr(24, 57);
		assertThat(medicine.on(23).level().against()).contains("fever");
		assertThat(medicine.on(24).level().against()).as("the morning before").contains("fever");
		assertThat(medicine.rhr(25, 57).on(25).level().against()).doesNotContain("fever");
	}

	@Test
	void needsFourteenReadingsForALevel() {
		assertThat(slow(57, 14).on(14).level().against()).containsExactly("too-few", "no-level");
		assertThat(slow(57, 15).on(15).level().against()).containsExactly("too-few");
	}

	/** Never from ten above: neither a level there nor a reading of today. */
	@Test
	void isNeverOfferedFromTenAboveByEitherOfTheTwo() {
		assertThat(slow(57, 21).rhr(22, 60).on(22).level().against()).contains("too-far");
		assertThat(slow(57, 21).rhr(22, 59.5).on(22).level().against()).doesNotContain("too-far");
		assertThat(slow(60, 21).rhr(22, 55).on(22).level().against()).contains("too-far");
	}

	/** In Stage 1 from day 3: its seven days are over on day 10. */
	@Test
	void countsMorningsInAStageOnceItsDaysAreOver() {
		Story story = slow(50, 8).runs(3, 9).rhr(9, 57).rhr(10, 57);
		assertThat(story.stage(10)).isEqualTo(1);
		assertThat(story.episode(10).free()).endsWith(new FreeMorning(Story.day(9), false),
				new FreeMorning(Story.day(10), true));
		Story cold = Story.ofAKnownAthlete().adult().sick(0, 2, Symptom.SNEEZING, Severity.MILD).well(3).run(3);
		cold.rhr(4, 57).rhr(5, 57);
		assertThat(cold.episode(5).path()).as("two days in Stage 1").isEqualTo(PathName.SHORT);
		assertThat(cold.episode(5).free()).endsWith(new FreeMorning(Story.day(4), false),
				new FreeMorning(Story.day(5), true));
	}

}
