package org.fallow.illness.core;

import java.util.stream.Stream;

import org.fallow.entry.AfterSession;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.entry.SymptomClass;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.fallow.rules.Clearance.EASY_ONLY;
import static org.fallow.rules.Clearance.FULL_TRAINING;
import static org.fallow.rules.Clearance.NOT_ASSESSED;
import static org.fallow.rules.Clearance.REFER;
import static org.fallow.rules.Clearance.REST;

/**
 * The clearance table of a day with no episode, row by row. The rows are the decision
 * text's; numbers of the trade have no source, flags are recomputed by us.
 */
class ClearanceTest {

	static Stream<Symptom> redFlags() {
		return Stream.of(Symptom.values()).filter(Symptom::isRedFlag);
	}

	static Stream<Symptom> openingSymptoms() {
		return Stream.of(Symptom.values()).filter((s) -> switch (s.classAt(Severity.MILD)) {
			case BELOW_THE_NECK, STOMACH, WHOLE_BODY, FEVER -> true;
			default -> false;
		});
	}

	static Stream<Symptom> aboveTheNeck() {
		return Stream.of(Symptom.values()).filter((s) -> s.classAt(Severity.MILD) == SymptomClass.ABOVE_THE_NECK);
	}

	@Test
	void clearsAQuietMorning() {
		assertThat(Story.ofAKnownAthlete().well(0).clearance(0)).isEqualTo(FULL_TRAINING);
		assertThat(Story.ofAKnownAthlete().well(0).reasons(0)).isEmpty();
	}

	@ParameterizedTest
	@MethodSource("redFlags")
	void refersEveryRedFlagAndOpensAHold(Symptom symptom) {
		Story story = Story.ofAKnownAthlete().sick(0, symptom, Severity.MILD);
		assertThat(story.clearance(0)).isEqualTo(REFER);
		assertThat(story.stage(0)).isZero();
		assertThat(story.on(0).holding()).isTrue();
	}

	@ParameterizedTest
	@EnumSource(value = AfterSession.class, names = { "CHEST_PAIN", "BREATHLESSNESS", "PALPITATIONS", "FAINTING" })
	void refersARedFlagAfterASession(AfterSession yes) {
		Story story = Story.ofAKnownAthlete().well(0).session(0, 5.0, Intensity.EASY, yes);
		assertThat(story.clearance(0)).isEqualTo(REFER);
	}

	@ParameterizedTest
	@EnumSource(value = ReportKind.class,
			names = { "PNEUMONIA", "GLANDULAR_FEVER", "MYOCARDITIS", "PERICARDITIS", "HOSPITAL" })
	void refersIllnessesThatHold(ReportKind kind) {
		assertThat(Story.ofAKnownAthlete().well(0).report(0, 0, kind, 5).clearance(0)).isEqualTo(REFER);
	}

	@Test
	void keepsReferringWithoutAnyEntry() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.CHEST_PAIN, Severity.MILD);
		assertThat(story.clearance(40)).isEqualTo(REFER);
	}

	@Test
	void keepsTheHoldWhenTheEntryIsCorrected() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.PALPITATIONS, Severity.MILD).late(0, 0, (e) -> e);
		assertThat(story.clearance(0)).isEqualTo(REFER);
	}

	@ParameterizedTest
	@MethodSource("openingSymptoms")
	void restsAndOpensAnEpisodeForSymptomsBelowTheNeckOrOfTheWholeBody(Symptom symptom) {
		Story story = Story.ofAKnownAthlete().sick(0, symptom, Severity.MILD);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.episode(0).firstOnset()).isEqualTo(Story.DAY_0);
	}

	@Test
	void restsAndOpensForFever() {
		assertThat(Story.ofAKnownAthlete().morning(0, Story.Entry::fever).stage(0)).isZero();
		assertThat(Story.ofAKnownAthlete().morning(0, (e) -> e.temperature(38.0)).clearance(0)).isEqualTo(REST);
		assertThat(Story.ofAKnownAthlete().morning(0, (e) -> e.temperature(37.9)).clearance(0))
			.isEqualTo(FULL_TRAINING);
	}

	@Test
	void restsAndOpensForFeverMedicineTakenForTheIllness() {
		Story story = Story.ofAKnownAthlete().morning(0, (e) -> e.medicine(FeverMedicine.ILLNESS));
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.stage(0)).isZero();
	}

	@Test
	void allowsEasyRunningAfterFeverMedicineForAnotherReason() {
		Story story = Story.ofAKnownAthlete().morning(0, (e) -> e.medicine(FeverMedicine.OTHER));
		assertThat(story.clearance(0)).isEqualTo(EASY_ONLY);
		assertThat(story.stage(0)).isEqualTo(-1);
	}

	@Test
	void countsAModerateCoughAsBelowTheNeck() {
		assertThat(Story.ofAKnownAthlete().sick(0, Symptom.COUGH, Severity.MILD).clearance(0)).isEqualTo(EASY_ONLY);
		assertThat(Story.ofAKnownAthlete().sick(0, Symptom.COUGH, Severity.MODERATE).clearance(0)).isEqualTo(REST);
	}

	@ParameterizedTest
	@MethodSource("aboveTheNeck")
	void allowsEasyRunningAboveTheNeck(Symptom symptom) {
		assertThat(Story.ofAKnownAthlete().sick(0, symptom, Severity.MILD).clearance(0)).isEqualTo(EASY_ONLY);
	}

	@Test
	void takesNoseAndThroatForAboveTheNeckUnlessTheyAreSevere() {
		Story moderate = Story.ofAKnownAthlete().sick(0, Symptom.SORE_THROAT, Severity.MODERATE);
		assertThat(moderate.clearance(0)).isEqualTo(EASY_ONLY);
		Story severe = Story.ofAKnownAthlete().sick(0, Symptom.SORE_THROAT, Severity.SEVERE);
		assertThat(severe.clearance(0)).isEqualTo(REST);
		assertThat(severe.stage(0)).isZero();
	}

	@Test
	void opensOnTheThirdColdMorningRunning() {
		Story story = Story.ofAKnownAthlete().sick(0, 2, Symptom.RUNNY_NOSE, Severity.MILD);
		assertThat(story.stage(1)).isEqualTo(-1);
		assertThat(story.stage(2)).isZero();
		assertThat(story.episode(2).firstOnset()).isEqualTo(Story.DAY_0);
	}

	@Test
	void passesOverGapsBetweenColdMorningsWithinSevenDays() {
		Story within = Story.ofAKnownAthlete()
			.sick(0, Symptom.RUNNY_NOSE, Severity.MILD)
			.sick(3, Symptom.RUNNY_NOSE, Severity.MILD)
			.sick(6, Symptom.RUNNY_NOSE, Severity.MILD);
		assertThat(within.stage(6)).isZero();
		Story outside = Story.ofAKnownAthlete()
			.sick(0, Symptom.RUNNY_NOSE, Severity.MILD)
			.sick(3, Symptom.RUNNY_NOSE, Severity.MILD)
			.sick(7, Symptom.RUNNY_NOSE, Severity.MILD);
		assertThat(outside.stage(7)).isEqualTo(-1);
	}

	@Test
	void startsTheColdRowAfreshAfterAWellMorning() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, 1, Symptom.RUNNY_NOSE, Severity.MILD)
			.well(2)
			.sick(3, Symptom.RUNNY_NOSE, Severity.MILD);
		assertThat(story.stage(3)).isEqualTo(-1);
	}

	@ParameterizedTest
	@EnumSource(value = ReportKind.class, names = { "ABOVE_NECK", "STOMACH", "FEVER", "CHEST", "COVID", "OTHER" })
	void opensForEveryReport(ReportKind kind) {
		Story story = Story.ofAKnownAthlete().well(0).report(0, -1, kind, 2);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.episode(0).firstOnset()).isEqualTo(Story.day(-1));
	}

	@ParameterizedTest
	@ValueSource(doubles = { 60, 69, 70, 90 })
	void restsWhenRestingHeartRateIsHigh(double bpm) {
		Story story = Story.ofAKnownAthlete().rhr(0, bpm);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.stage(0)).isEqualTo(-1);
		assertThat(story.on(0).notices()).extracting("code").contains("advised.ask-symptoms");
	}

	@Test
	void clearsASingleRaisedMorningAndHoldsBackTheSecond() {
		Story story = Story.ofAKnownAthlete().rhr(0, 54).rhr(1, 54);
		assertThat(story.clearance(0)).isEqualTo(FULL_TRAINING);
		assertThat(story.clearance(1)).isEqualTo(EASY_ONLY);
	}

	@Test
	void holdsBackOneMorningOfTwiceTheLine() {
		assertThat(Story.ofAKnownAthlete().rhr(0, 57.9).clearance(0)).isEqualTo(FULL_TRAINING);
		assertThat(Story.ofAKnownAthlete().rhr(0, 58).clearance(0)).isEqualTo(EASY_ONLY);
	}

	@Test
	void holdsBackOnSuppressedVariability() {
		Story story = Story.ofANewcomer();
		for (int i = -28; i < 0; i++) {
			double rmssd = (i % 2 == 0) ? 60 : 70;
			story.morning(i, (e) -> e.rmssd(rmssd));
		}
		for (int i = 0; i < 4; i++) {
			story.morning(i, (e) -> e.rmssd(35.0));
		}
		assertThat(story.clearance(3)).isEqualTo(EASY_ONLY);
		assertThat(story.reasons(3)).containsExactly("reason.hrv-suppressed");
	}

	@Test
	void saysNothingOfVariabilityBelowThreeReadings() {
		Story story = Story.ofAKnownAthlete().morning(0, (e) -> e.rmssd(10.0));
		assertThat(story.on(0).hrv().flag()).isNull();
		assertThat(story.clearance(0)).isEqualTo(FULL_TRAINING);
	}

	@Test
	void holdsBackWhenTheAthleteFeelsUnwell() {
		assertThat(Story.ofAKnownAthlete().morning(0, (e) -> e.feels(Feels.UNWELL)).clearance(0)).isEqualTo(EASY_ONLY);
		assertThat(Story.ofAKnownAthlete().morning(0, (e) -> e.feels(Feels.ABLE)).clearance(0))
			.isEqualTo(FULL_TRAINING);
	}

	@Test
	void holdsBackOnASecondLowMorningAtMostThreeDaysApart() {
		Story story = Story.ofAKnownAthlete().rhr(0, 44).rhr(1, 44);
		assertThat(story.clearance(0)).isEqualTo(FULL_TRAINING);
		assertThat(story.clearance(1)).isEqualTo(EASY_ONLY);
		assertThat(Story.ofAKnownAthlete().rhr(0, 44).rhr(3, 44).clearance(3)).isEqualTo(EASY_ONLY);
		assertThat(Story.ofAKnownAthlete().rhr(0, 44).rhr(4, 44).clearance(4)).isEqualTo(FULL_TRAINING);
	}

	@Test
	void assessesNothingWithoutAnEntry() {
		assertThat(Story.ofAKnownAthlete().well(0).clearance(1)).isEqualTo(NOT_ASSESSED);
	}

	@Test
	void letsARestStandTheNextDayWithoutAnEntry() {
		Story story = Story.ofAKnownAthlete().rhr(0, 62);
		assertThat(story.clearance(1)).isEqualTo(REST);
		assertThat(story.reasons(1)).contains("reason.rest-stands");
	}

	/**
	 * Safer reading: a kept high flag works on silent mornings too, for three of them.
	 */
	@Test
	void keepsAHighFlagOverSilentMornings() {
		Story story = Story.ofAKnownAthlete().rhr(0, 62);
		assertThat(story.clearance(3)).isEqualTo(REST);
		assertThat(story.clearance(4)).isEqualTo(NOT_ASSESSED);
	}

	@Test
	void standsAboveTheLineWhenTheReadingIsLeftOut() {
		Story story = Story.ofAKnownAthlete().rhr(0, 58).withoutRhr(1).withoutRhr(2).withoutRhr(3).withoutRhr(4);
		assertThat(story.reasons(1)).containsExactly("reason.above-the-line-stands");
		assertThat(story.reasons(3)).containsExactly("reason.above-the-line-stands");
		assertThat(story.reasons(4)).containsExactlyInAnyOrder("reason.rhr-left-out", "reason.above-the-line-stands");
		assertThat(story.clearance(4)).isEqualTo(EASY_ONLY);
	}

	@Test
	void treatsAReadingInASeriesWithoutABaselineAsLeftOut() {
		Story story = Story.ofAKnownAthlete().rhr(0, 62).morning(1, (e) -> e.by(Method.WORN).rhr(48.0));
		assertThat(story.clearance(1)).isEqualTo(REST);
		assertThat(story.on(1).rhr().flag()).isNull();
	}

	@Test
	void comparesNoPostureOrMedicineWithAnother() {
		assertThat(Story.ofAKnownAthlete().morning(0, (e) -> e.posture(Posture.SITTING).rhr(62.0)).on(0).rhr().flag())
			.isNull();
		assertThat(Story.ofAKnownAthlete().medicine(0, true).rhr(0, 44).on(0).rhr().flag()).isNull();
	}

	@Test
	void usesNoUnsureReading() {
		Story story = Story.ofAKnownAthlete().morning(0, (e) -> e.rhr(110.0).unsure());
		assertThat(story.on(0).rhr().flag()).isNull();
		assertThat(story.on(0).notices()).extracting("code").contains("advised.unsure");
	}

	@Test
	void clearsNoIntensityDuringAnInjury() {
		Story story = Story.ofAKnownAthlete().injured(0, 3).well(0).well(4);
		assertThat(story.clearance(0)).isEqualTo(NOT_ASSESSED);
		assertThat(story.clearance(4)).isEqualTo(FULL_TRAINING);
	}

	@Test
	void letsTheCoachBeStricterForTheDaysNamed() {
		Story story = Story.ofAKnownAthlete().stricter(0, 1, Clearance.REST).well(0, 2);
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.clearance(1)).isEqualTo(REST);
		assertThat(story.clearance(2)).isEqualTo(FULL_TRAINING);
	}

	@Test
	void takesTheWorstOfSeveralAndKeepsAllReasons() {
		Story story = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.rhr(60.0).feels(Feels.UNWELL).symptom(Symptom.SNEEZING, Severity.MILD));
		assertThat(story.clearance(0)).isEqualTo(REST);
		assertThat(story.reasons(0)).containsExactly("reason.rhr-high", "reason.above-the-neck", "reason.feels-unwell");
	}

	@Test
	void passesOverAKnownSymptomUnlessItIsWorse() {
		Story story = Story.ofAKnownAthlete().known(0, Symptom.SNEEZING, Severity.MODERATE);
		assertThat(story.sick(0, Symptom.SNEEZING, Severity.MODERATE).clearance(0)).isEqualTo(FULL_TRAINING);
		assertThat(story.sick(31, Symptom.SNEEZING, Severity.MILD).clearance(31)).isEqualTo(EASY_ONLY);
		assertThat(story.sick(32, Symptom.SNEEZING, Severity.SEVERE).clearance(32)).isEqualTo(REST);
	}

	@Test
	void doesNotBlockForLossOfSmellAloneButKeepsItOutOfBaselines() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.SMELL_LOSS, Severity.SEVERE).well(1);
		assertThat(story.clearance(0)).isEqualTo(FULL_TRAINING);
		assertThat(story.on(1).rhr().n()).isEqualTo(27);
	}

}
