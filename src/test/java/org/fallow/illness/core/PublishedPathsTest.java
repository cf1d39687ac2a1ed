package org.fallow.illness.core;

import java.util.List;
import java.util.stream.IntStream;

import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.BorgScale;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.PublishedPaths;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet.Path;
import org.fallow.rules.RuleSet.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * The published protocols, as numbers and as lived by the fold. Elliott 2020, BJSM
 * 54:1174: caps and minutes R, day counts M, corroborated R. Salman 2021, BMJ 372:m4721:
 * key box R, phases R2.
 */
class PublishedPathsTest {

	private static final Path ELLIOTT = PublishedPaths.of(Protocol.ELLIOTT_2020, PathName.LONG);

	private static final Path SALMAN = PublishedPaths.of(Protocol.SALMAN_2021, PathName.LONG);

	@Test
	void keepsTheNumbersOfElliott() {
		assertThat(ELLIOTT.illDays()).isEqualTo(10);
		assertThat(ELLIOTT.fromLastSymptom()).isFalse();
		assertThat(ELLIOTT.symptomFreeMornings()).isEqualTo(7);
		List<Stage> graded = ELLIOTT.stages().subList(0, 4);
		assertThat(graded).extracting(Stage::heartRateCeiling).containsExactly(0.70, 0.80, 0.80, 0.80);
		assertThat(graded).extracting(Stage::longRunMinutes).containsExactly(15, 30, 45, 60);
		assertThat(graded).extracting(Stage::days).containsExactly(2, 1, 1, 2);
		assertThat(ELLIOTT.stages()).hasSize(5).last().extracting(Stage::clearance).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void keepsTheNumbersOfSalman() {
		assertThat(SALMAN.symptomFreeMornings()).isEqualTo(7);
		assertThat(SALMAN.illDays()).isEqualTo(7);
		assertThat(SALMAN.fromLastSymptom()).isTrue();
		assertThat(SALMAN.stages()).hasSize(5).allMatch((stage) -> stage.days() >= 7);
		assertThat(SALMAN.stages()).extracting(Stage::borgCeiling).containsExactly(8, 11, 14, 14, null);
		assertThat(SALMAN.stages()).extracting(Stage::effortCeiling).containsExactly(1.0, 2.0, 4.0, 4.0, null);
		assertThat(SALMAN.stages()).last().extracting(Stage::clearance).isEqualTo(Clearance.FULL_TRAINING);
	}

	/** Anchors of both scales from memory (M); between two of them the lower one. */
	@ParameterizedTest
	@CsvSource({ "6, 1", "8, 1", "9, 1", "10, 1", "11, 2", "12, 2", "13, 4", "14, 4", "15, 5", "16, 5", "17, 7",
			"20, 7" })
	void takesTheSaferEffortOfTheOtherScale(int borg, double cr10) {
		assertThat(BorgScale.cr10Ceiling(borg)).isEqualTo(cr10);
	}

	@ParameterizedTest
	@ValueSource(ints = { 5, 21 })
	void knowsNoRatingOutsideTheScale(int borg) {
		assertThatIllegalArgumentException().isThrownBy(() -> BorgScale.cr10Ceiling(borg));
	}

	/** Elliott: normal training not before day 17; onset is day 1, here day 0. */
	@Test
	void opensFullTrainingOnDay17OfElliottAtTheEarliest() {
		Story story = ill(2, 30);
		assertThat(firstDayOfStage(story, ELLIOTT, 1, 30)).isEqualTo(10);
		assertThat(firstDayOfStage(story, ELLIOTT, 5, 30) + 1).isEqualTo(17);
		assertThat(clearance(story, ELLIOTT, 15)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(clearance(story, ELLIOTT, 16)).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void waitsForSevenSymptomFreeMorningsInElliott() {
		assertThat(firstDayOfStage(ill(8, 40), ELLIOTT, 1, 40)).isEqualTo(8 + 7);
	}

	@ParameterizedTest
	@CsvSource({ "10, 1", "11, 1", "12, 2", "13, 3", "14, 4", "15, 4", "16, 5", "29, 5", "30, -1" })
	void livesThroughTheStagesOfElliott(int day, int stage) {
		assertThat(stage(ill(2, day), ELLIOTT, day)).isEqualTo(stage);
	}

	/** Salman: full training not before day 35 after the last symptomatic morning. */
	@ParameterizedTest
	@ValueSource(ints = { 0, 3, 12 })
	void opensFullTrainingOnDay35AfterTheSymptomsOfSalmanAtTheEarliest(int lastSick) {
		Story story = ill(lastSick, lastSick + 40);
		assertThat(firstDayOfStage(story, SALMAN, 1, lastSick + 40) - lastSick).isEqualTo(7);
		assertThat(firstDayOfStage(story, SALMAN, 5, lastSick + 40) - lastSick).isEqualTo(35);
	}

	@Test
	void shutsTheGateAfterASessionAboveTheEffortOfThePhase() {
		Story calm = ill(0, 14);
		assertThat(stage(calm, SALMAN, 14)).isEqualTo(2);
		Story hard = ill(0, 14).session(12, 1.5, Intensity.EASY);
		assertThat(stage(hard, SALMAN, 14)).isEqualTo(1);
	}

	@Test
	void shutsTheGateAfterABadMorningInAOneDayStage() {
		Story story = ill(2, 12).rhr(13, 62);
		assertThat(stage(story, ELLIOTT, 13)).isEqualTo(2);
		assertThat(clearance(story, ELLIOTT, 13)).isEqualTo(Clearance.REST);
	}

	@Test
	void goesBackToIllWhenSymptomsOfIllnessReturnInAnyStage() {
		Story story = ill(2, 13).sick(14, Symptom.FEVERISH, Severity.MILD);
		List<DayAssessment> days = lived(story, ELLIOTT, 14);
		assertThat(days.get(days.size() - 1).decisions()).extracting(Decision::kind).contains(Decision.Kind.RELAPSE);
		assertThat(stage(story, ELLIOTT, 14)).isZero();
	}

	@Test
	void needsARunInEachStageOfElliott() {
		Story story = Story.ofAKnownAthlete()
			.report(0, 0, ReportKind.COVID, 5)
			.sick(0, 2, Symptom.FATIGUE, Severity.MODERATE)
			.well(3, 30);
		assertThat(stage(story, ELLIOTT, 30)).isEqualTo(1);
	}

	/** COVID-19 takes the long path; easy runs from the first day of Stage 1 on. */
	private static Story ill(int lastSick, int last) {
		Story story = Story.ofAKnownAthlete()
			.report(0, 0, ReportKind.COVID, 5)
			.sick(0, lastSick, Symptom.FATIGUE, Severity.MODERATE);
		for (int day = lastSick + 1; day <= last; day++) {
			story.well(day).session(day, 1.0, Intensity.EASY);
		}
		return story;
	}

	private static List<DayAssessment> lived(Story story, Path path, int to) {
		RuleBook book = RuleBook.of(DefaultRules.ruleSet().with(path));
		return Course.withoutForecast(story.timeline(), book, Story.day(to));
	}

	private static int stage(Story story, Path path, int day) {
		List<DayAssessment> days = lived(story, path, day);
		Episode episode = days.get(days.size() - 1).state().episode();
		return (episode == null) ? -1 : episode.stage();
	}

	private static Clearance clearance(Story story, Path path, int day) {
		List<DayAssessment> days = lived(story, path, day);
		return days.get(days.size() - 1).clearance();
	}

	private static int firstDayOfStage(Story story, Path path, int stage, int to) {
		List<DayAssessment> days = lived(story, path, to);
		return IntStream.range(0, days.size())
			.filter((i) -> days.get(i).decisions().contains(new Decision(Decision.Kind.GATE, stage - 1, stage)))
			.map((i) -> (int) (days.get(i).day().toEpochDay() - Story.DAY_0.toEpochDay()))
			.findFirst()
			.orElseThrow();
	}

}
