package org.fallow.illness.core;

import java.util.List;
import java.util.Map;

import org.fallow.entry.KnownSymptom;
import org.fallow.entry.Method;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleEdit;
import org.fallow.rules.RuleSet;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.fallow.rules.Clearance.EASY_ONLY;

/**
 * Days on which the rules were looser than the decision text, found by reading it a
 * second time against working levels, corrections and rule sets of coaches.
 */
class SecondReviewTest {

	/** Ill on days 0 and 1, then slow to come back: 57 bpm where 50 is normal. */
	private static Story slow(int to) {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 1, Symptom.FATIGUE, Severity.MILD);
		for (int day = 2; day <= to; day++) {
			story.rhr(day, 57);
		}
		return story;
	}

	/** In Stage 1 of the three-week path from day 3 on. */
	private static Story inStage1() {
		return Story.ofAKnownAthlete().adult().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE).well(2, 3);
	}

	@Test
	void endsAWorkingLevelWhenAHoldStandsAgain() {
		Story story = slow(32).hold(20).cleared(21, 28, Clearance.FULL_TRAINING).workingLevel(25);
		assertThat(story.on(26).rhr().working()).isNotNull();
		assertThat(story.on(28).clearance()).isNotEqualTo(Clearance.REFER);
		assertThat(story.clearance(29)).isEqualTo(Clearance.REFER);
		story.cleared(30, null, Clearance.FULL_TRAINING);
		assertThat(story.on(31).rhr().working()).isNull();
		assertThat(story.on(31).rhr().dev()).isEqualTo(7);
	}

	@Test
	void endsAWorkingLevelHeldAfterTheCloseWithFever() {
		Story story = slow(44).workingLevel(22).runs(23, 44);
		int closed = story.lived(44)
			.stream()
			.filter((d) -> d.state().closedOn() != null)
			.findFirst()
			.orElseThrow()
			.day()
			.compareTo(Story.DAY_0);
		assertThat(closed).isPositive();
		assertThat(story.on(44).state().episode()).isNull();
		assertThat(story.on(44).rhr().working()).isNotNull();
		story.morning(45, (e) -> e.rhr(57.0).fever());
		for (int day = 46; day <= 49; day++) {
			story.rhr(day, 57);
		}
		story.withdrawn(47);
		assertThat(story.on(49).state().episode()).isNull();
		assertThat(story.on(49).rhr().working()).isNull();
	}

	@Test
	void judgesAMorningBeforeTheWorkingLevelByTheOwnBaseline() {
		Story story = slow(22).workingLevel(22).late(22, 23, (e) -> e.rhr(57.0)).rhr(23, 57);
		assertThat(story.on(23).rhr().before()).last().satisfies((d) -> assertThat(d.dev()).isEqualTo(7));
	}

	/**
	 * With quiet mornings the days of the stage would have been missing just the same.
	 */
	@Test
	void doesNotTakeDaysThatAStageNeedsAnywayForMorningsShutByNumbers() {
		Story story = inStage1();
		for (int day = 4; day <= 24; day++) {
			story.rhr(day, (day % 2 == 0) ? 57 : 50).run(day);
		}
		assertThat(story.episode(8).free()).extracting(FreeMorning::shut).doesNotContain(true);
	}

	@Test
	void takesAMorningForBadWhenItsReadingIsCorrectedToHigh() {
		Story story = inStage1().well(4, 10).runs(3, 9);
		assertThat(story.on(10).state().episode().stage()).isEqualTo(2);
		Story corrected = inStage1().well(4, 9).runs(3, 9).late(9, 10, (e) -> e.rhr(75.0)).well(10);
		assertThat(corrected.on(10).marks()).extracting((m) -> m.mark()).contains(Mark.BAD);
		assertThat(corrected.stage(10)).isEqualTo(1);
	}

	@Test
	void letsACoachGoBySymptomsOnlyWhereMethodOrMedicineChanged() {
		assertThat(slow(10).on(4).mayGoBySymptoms()).isFalse();
		assertThat(slow(4).withoutRhr(5).on(5).mayGoBySymptoms()).isFalse();
		Story changed = slow(4).morning(5, (e) -> e.by(Method.WORN));
		assertThat(changed.on(5).mayGoBySymptoms()).isTrue();
		assertThat(changed.symptomsOnly(6).on(6).mayGoBySymptoms()).isFalse();
		assertThat(changed.episode(6).symptomsOnly()).isTrue();
	}

	@Test
	void opensNoGateForWhoDoesNotEatNormallyOnAnyPath() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 3, Symptom.VOMITING, Severity.MODERATE);
		for (int day = 4; day <= 7; day++) {
			story.morning(day, (e) -> e.eating(false));
		}
		assertThat(story.stage(7)).isZero();
	}

	@Test
	void remembersReadingsAsFarBackAsTheRulesLookForASecondOne() {
		Story story = Story.ofAKnownAthlete().rhr(0, 54);
		for (int day = 1; day < 4; day++) {
			story.withoutRhr(day);
		}
		story.rhr(4, 54);
		List<DayAssessment> days = Course.of(story.timeline(), RuleBook.of(lookingBackFourMornings()), Story.day(4));
		assertThat(days.get(days.size() - 1).rhr().starts()).isTrue();
		assertThat(days.get(days.size() - 1).clearance()).isEqualTo(EASY_ONLY);
	}

	/** Noted today for days gone by, it makes no sick morning a symptom-free one. */
	@Test
	void passesOverNoMorningBeforeAKnownSymptomWasNoted() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 5, Symptom.SNEEZING, Severity.MILD);
		story.add(new KnownSymptom(Story.day(0), Story.day(29), story.recorded(5, 5), Symptom.SNEEZING, Severity.MILD));
		assertThat(story.stage(4)).isZero();
		assertThat(story.criterion(5, "symptom-free").observed()).containsExactly("0");
	}

	/** The median is of the last three deviations, however far flags look back. */
	@Test
	void takesNoQuietMorningFromDeviationsOlderThanThree() {
		Story story = Story.ofAKnownAthlete().adult().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
		double[] beats = { 50, 54, 50, 54 };
		for (int i = 0; i < beats.length; i++) {
			double bpm = beats[i];
			story.morning(2 + i, (e) -> e.rhr(bpm).feels(null));
		}
		List<DayAssessment> days = Course.of(story.timeline(), RuleBook.of(lookingBackFourMornings()), Story.day(5));
		DayAssessment last = days.get(days.size() - 1);
		assertThat(last.rhr().before()).hasSize(4);
		assertThat(last.gate().criteria()).filteredOn((c) -> c.code().equals("quiet"))
			.singleElement()
			.matches(Criterion::shuts);
	}

	private static RuleSet lookingBackFourMornings() {
		return RuleEdit.of(DefaultRules.ruleSet(), Map.of("/line/apartDays", "4")).rules();
	}

}
