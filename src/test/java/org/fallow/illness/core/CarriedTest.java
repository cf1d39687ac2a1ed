package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

import org.fallow.entry.Fact;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleBounds;
import org.fallow.rules.RuleEdit;
import org.fallow.rules.RuleSet;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What a decided day carries on to the next: enough to go on from any day, as it was
 * decided, and no more after a year than after a week.
 */
class CarriedTest {

	private static final RuleBook BOOK = RuleBook.of(DefaultRules.ruleSet());

	private static final Severity MILD = Severity.MILD;

	private static Story threeWeeks() {
		return Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
	}

	/** In Stage 2 from day 10 on. */
	private static Story inStage2() {
		return threeWeeks().well(2, 10).runs(3, 9);
	}

	private static State after(Story story, int day) {
		List<DayAssessment> days = Course.withoutForecast(story.timeline(), BOOK, Story.day(day));
		return days.get(days.size() - 1).state();
	}

	private static List<Fact> since(Story story, LocalDate from) {
		return story.timeline()
			.facts()
			.stream()
			.filter((f) -> !(f instanceof MorningEntry || f instanceof SessionLog) || !f.day().isBefore(from))
			.toList();
	}

	/** The baseline of before the onset is computed anew from readings of then. */
	@Test
	void goesOnFromAnIllnessOfEightMonths() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, 240, Symptom.FATIGUE, MILD)
			.well(241)
			.late(-10, 241, (e) -> e.symptom(Symptom.SNEEZING, MILD));
		List<DayAssessment> whole = Course.withoutForecast(story.timeline(), BOOK, Story.day(241));
		State state = whole.get(whole.size() - 2).state();
		List<Fact> recent = since(story, state.factsFrom());
		assertThat(Course.withoutForecast(state, new Timeline(recent), BOOK, Story.day(241)))
			.containsExactly(whole.get(whole.size() - 1));
		assertThat(whole.get(whole.size() - 1).rhr().n()).isEqualTo(24);
	}

	@Test
	void goesOnFromBaselinesHeldAfterALongIllness() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, 200, Symptom.FATIGUE, MILD)
			.well(201, 238)
			.runs(207, 230)
			.late(-10, 238, (e) -> e.symptom(Symptom.SNEEZING, MILD));
		List<DayAssessment> whole = Course.withoutForecast(story.timeline(), BOOK, Story.day(238));
		State state = whole.get(whole.size() - 2).state();
		assertThat(state.episode()).isNull();
		List<Fact> recent = since(story, state.factsFrom());
		assertThat(Course.withoutForecast(state, new Timeline(recent), BOOK, Story.day(238)))
			.containsExactly(whole.get(whole.size() - 1));
		assertThat(whole.get(whole.size() - 1).rhr().n()).isEqualTo(24);
	}

	@Test
	void goesOnFromTheMiddleOfAReturn() {
		Story story = inStage2().well(11, 20).runs(10, 19);
		List<DayAssessment> whole = Course.withoutForecast(story.timeline(), BOOK, Story.day(20));
		State state = whole.get(whole.size() - 6).state();
		assertThat(state.factsFrom()).as("eight weeks of drift over sixty days of readings")
			.isBeforeOrEqualTo(state.day().minusDays(56 + 60));
		assertThat(Course.withoutForecast(state, new Timeline(since(story, state.factsFrom())), BOOK, Story.day(20)))
			.isEqualTo(whole.subList(whole.size() - 5, whole.size()));
	}

	@Test
	void asksForNoReadingsOfAYearAgo() {
		State state = after(Story.ofAKnownAthlete(), 0);
		assertThat(state.factsFrom()).isAfter(state.day().minusYears(1));
	}

	@Test
	void carriesAFewMorningsAndNoOldEpisodes() {
		Story story = threeWeeks().well(2, 24).runs(3, 20);
		assertThat(after(story, 24).out()).hasSize(1);
		for (int day = 25; day <= 230; day++) {
			story.well(day);
		}
		State state = after(story, 230);
		assertThat(state.marks()).extracting(State.PastMark::day).containsExactly(Story.day(229), Story.day(230));
		assertThat(state.deviations()).extracting(State.PastDeviation::day)
			.containsExactly(Story.day(228), Story.day(229), Story.day(230));
		assertThat(state.out()).isEmpty();
	}

	/** After symptoms-only is set nothing is left out. */
	@Test
	void keepsNoFlagOnceTheEpisodeGoesBySymptoms() {
		Story story = threeWeeks().well(2, 3).rhr(4, 62).withoutRhr(5);
		assertThat(story.on(5).state().kept()).isNotNull();
		assertThat(story.symptomsOnly(5).on(5).state().kept()).isNull();
	}

	@Test
	void keepsAFlagThatIsOlderThanTheDecision() {
		Story story = threeWeeks().well(2, 3).symptomsOnly(4).well(4).withoutRhr(5);
		assertThat(story.on(5).state().kept()).isNotNull();
	}

	@Test
	void takesASymptomThatComesInLateForABadMorning() {
		Story story = inStage2().well(11).late(10, 11, (e) -> e.symptom(Symptom.SNEEZING, MILD));
		assertThat(story.on(11).marks()).contains(new State.PastMark(Story.day(10), Mark.BAD));
	}

	@Test
	void leavesTheMarkWhenACorrectionIsAsGood() {
		Story story = inStage2().well(11).late(10, 11, (e) -> e.rhr(51.0));
		assertThat(story.on(11).marks()).contains(new State.PastMark(Story.day(10), Mark.GOOD));
	}

	/** Raised for action needs a second raised morning, also in a correction. */
	@Test
	void takesACorrectedReadingForBadOnlyWithASecondRaisedOne() {
		Story one = inStage2().well(11).late(10, 11, (e) -> e.rhr(54.0));
		assertThat(one.on(11).marks()).contains(new State.PastMark(Story.day(10), Mark.GOOD));
		Story two = threeWeeks().well(2, 8).rhr(9, 54).well(10, 11).runs(3, 9).late(10, 11, (e) -> e.rhr(54.0));
		assertThat(two.on(11).marks()).contains(new State.PastMark(Story.day(10), Mark.BAD));
	}

	/**
	 * By the baseline known from day 11 on, 48, the mornings of days 9 and 10 would have
	 * been raised for action together.
	 */
	@Test
	void leavesADecidedMarkWhenTheHeldBaselineMoves() {
		Story story = threeWeeks().well(2, 8).rhr(9, 53).rhr(10, 52).well(11).runs(3, 10);
		for (int day = -28; day <= -4; day++) {
			story.late(day, 11, (e) -> e.rhr(48.0));
		}
		assertThat(story.on(11).rhr().baseline()).isEqualTo(48);
		assertThat(story.on(11).marks()).containsExactly(new State.PastMark(Story.day(9), Mark.GOOD),
				new State.PastMark(Story.day(10), Mark.GOOD));
	}

	/** A deviation stays as decided though a late fact moves the baseline it was from. */
	@Test
	void leavesADecidedDeviationWhenTheBaselineMoves() {
		Story story = Story.ofANewcomer();
		int[] beats = { 48, 48, 48, 50, 52, 52, 52, 50 };
		for (int day = 0; day < beats.length; day++) {
			story.rhr(day, beats[day]);
		}
		story.well(8).late(0, 8, (e) -> e.rhr(52.0));
		assertThat(story.on(7).rhr().dev()).isZero();
		assertThat(story.on(8).rhr().before())
			.containsExactly(new State.PastDeviation(Story.day(7), 0, story.on(7).rhr().series(), false));
	}

	@Test
	void usesTheDeviationsOfTheThreeMorningsBefore() {
		Story story = Story.ofAKnownAthlete().well(0).late(-5, 0, (e) -> e.rhr(54.0));
		assertThat(story.on(0).rhr().before()).extracting(State.PastDeviation::day)
			.containsExactly(Story.day(-3), Story.day(-2), Story.day(-1));
	}

	@Test
	void namesTheSeriesOfTodaysReadingElseOfTheLatest() {
		Story worn = Story.ofAKnownAthlete().morning(0, (e) -> e.by(Method.WORN));
		assertThat(worn.on(0).rhr().series().method()).isEqualTo(Method.WORN);
		Story none = Story.ofAKnownAthlete().morning(0, (e) -> e.by(Method.WORN).rhr(null));
		assertThat(none.on(0).rhr().series().method()).isEqualTo(Method.STRAP);
		assertThat(Story.ofAKnownAthlete().on(0).rhr().series().method()).isEqualTo(Method.STRAP);
	}

	@Test
	void saysHowManyReadingsThereAreBeforeABaselineExists() {
		Story story = Story.ofANewcomer().well(0, 5);
		assertThat(story.on(5).rhr().baseline()).isNull();
		assertThat(story.on(5).rhr().n()).isEqualTo(5);
	}

	/** An episode's days, margin and well mornings too, never enter a baseline. */
	@Test
	void takesNoWellMorningOfAnEpisodeIntoTheBaseline() {
		Story story = threeWeeks().well(2, 31).runs(3, 20);
		assertThat(story.on(31).rhr().heldAsOf()).isNull();
		assertThat(story.on(31).rhr().n()).as("the latest fourteen, seven of them of before").isEqualTo(14);
	}

	@Test
	void takesTheChangeOfMedicineWithTheLatestDay() {
		Story stopped = Story.ofAKnownAthlete().medicine(-40, true).medicine(-35, false);
		assertThat(stopped.on(0).rhr().series().medicine()).isFalse();
		Story begun = Story.ofAKnownAthlete().medicine(-20, true);
		begun.add(new MedicineChange(Story.day(-30), begun.recorded(-1, 9), false));
		assertThat(begun.on(0).rhr().series().medicine()).as("told late, of an earlier day").isTrue();
		Story ahead = Story.ofAKnownAthlete();
		ahead.add(new MedicineChange(Story.day(5), ahead.recorded(-1, 9), true));
		assertThat(ahead.on(0).rhr().series().medicine()).isFalse();
	}

	@Test
	void takesTheReadingBeforeFromThreeDaysAgoAtMost() {
		Story three = Story.ofAKnownAthlete().rhr(0, 54).withoutRhr(1).withoutRhr(2).rhr(3, 54);
		assertThat(three.on(3).rhr().starts()).isTrue();
		Story four = Story.ofAKnownAthlete().rhr(0, 54).withoutRhr(1).withoutRhr(2).withoutRhr(3).rhr(4, 54);
		assertThat(four.on(4).rhr().starts()).isFalse();
		Story between = Story.ofAKnownAthlete().rhr(0, 54).well(1).rhr(2, 54);
		assertThat(between.on(2).rhr().starts()).as("the reading before is yesterday's").isFalse();
		Story edge = Story.ofAKnownAthlete().rhr(0, 53).rhr(1, 56);
		assertThat(edge.on(1).rhr().starts()).as("neither under 4").isFalse();
	}

	/** Fourteen in the window are not fewer than fourteen: no older one is taken. */
	@Test
	void takesOlderReadingsOnlyIfThereAreFewerThanFourteen() {
		RuleSet rules = RuleEdit.of(DefaultRules.ruleSet(), Map.of("/baseline/fallbackReadings", "28")).rules();
		assertThat(RuleBounds.check(rules)).isEmpty();
		Story fourteen = Story.ofANewcomer().well(-50, -36).well(-14, -1);
		assertThat(readings(fourteen, rules)).isEqualTo(14);
		Story thirteen = Story.ofANewcomer().well(-50, -36).well(-13, -1);
		assertThat(readings(thirteen, rules)).isEqualTo(28);
	}

	private static int readings(Story story, RuleSet rules) {
		List<DayAssessment> days = Course.withoutForecast(story.timeline(), RuleBook.of(rules), Story.day(0));
		return days.get(days.size() - 1).rhr().n();
	}

}
