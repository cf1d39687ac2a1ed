package org.fallow.illness.core;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/** The small readings of the decision text, each sentence by its own name. */
class SmallReadingsTest {

	@Test
	void aKeptHighGivesRestOnThreeCalendarMorningsEnteredOrNot() {
		Story silent = Story.ofAKnownAthlete().well(-1).rhr(0, 63).well(9);
		assertThat(silent.clearance(0)).isEqualTo(Clearance.REST);
		for (int day = 1; day <= 3; day++) {
			assertThat(silent.clearance(day)).as("silent, day %s", day).isEqualTo(Clearance.REST);
		}
		assertThat(silent.clearance(4)).isNotEqualTo(Clearance.REST);
		Story entered = Story.ofAKnownAthlete().rhr(0, 63).withoutRhr(1).withoutRhr(2).withoutRhr(3).withoutRhr(4);
		for (int day = 1; day <= 3; day++) {
			assertThat(entered.clearance(day)).as("entered, day %s", day).isEqualTo(Clearance.REST);
		}
		assertThat(entered.clearance(4)).isEqualTo(Clearance.EASY_ONLY);
	}

	@Test
	void anyOtherRestStandsOneFurtherDay() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, Severity.MILD).withdrawn(2).well(9);
		Story rest = Story.ofAKnownAthlete().well(-1).sick(0, Symptom.FATIGUE, Severity.MILD).withdrawn(0).well(9);
		assertThat(story.clearance(1)).isEqualTo(Clearance.REST);
		assertThat(rest.clearance(2)).isEqualTo(Clearance.NOT_ASSESSED);
	}

	@Test
	void lowOnASecondMorningIsTwoLowReadingsRunningAtMostThreeDaysApart() {
		assertThat(Story.ofAKnownAthlete().rhr(0, 44).rhr(3, 44).clearance(3)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(Story.ofAKnownAthlete().rhr(0, 44).rhr(4, 44).clearance(4)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(Story.ofAKnownAthlete().rhr(0, 44).well(1).rhr(2, 44).clearance(2))
			.isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void aboveTheNeckTogetherWithStomachSymptomsTakesThreeWeeks() {
		Story story = Story.ofAKnownAthlete()
			.morning(0,
					(e) -> e.symptom(Symptom.VOMITING, Severity.MILD).symptom(Symptom.RUNNY_NOSE, Severity.MILD));
		assertThat(path(story, 0)).isEqualTo(PathName.THREE_WEEK);
	}

	@Test
	void aRelapseLengthensStomachToThreeWeekAndThreeWeekToLong() {
		assertThat(path(relapsed(Symptom.VOMITING), 5)).isEqualTo(PathName.THREE_WEEK);
		assertThat(path(relapsed(Symptom.FATIGUE), 5)).isEqualTo(PathName.LONG);
	}

	@Test
	void aRelapseKeepsTheFirstOnsetsBaseline() {
		Story story = relapsed(Symptom.FATIGUE);
		Episode first = story.on(1).state().episode();
		Episode again = story.on(5).state().episode();
		assertThat(again.latestOnset()).isEqualTo(Story.day(5));
		assertThat(again.held()).isEqualTo(first.held());
		assertThat(again.held().asOf()).isEqualTo(Story.day(-3));
	}

	@Test
	void aNewcomerWithoutABaselineAtOnsetMinusThreeIsUntrackedForThatEpisode() {
		Story story = Story.ofANewcomer().well(-8, -1).sick(0, Symptom.FATIGUE, Severity.MILD).well(1, 9);
		assertThat(story.on(9).state().episode().tracked()).isFalse();
	}

	@Test
	void daysFromOnsetMinusThreeToTheDayBeforeTheCloseAreOutOfBaselines() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, Severity.MILD).well(1, 40).runs(3, 40);
		LocalDates closed = new LocalDates(story);
		assertThat(story.on(closed.day).state().out()).contains(new DayRange(Story.day(-3), Story.day(closed.day - 1)));
	}

	@Test
	void withdrawnDaysStayOutOfBaselines() {
		Story story = Story.ofAKnownAthlete().sick(0, Symptom.FATIGUE, Severity.MILD).withdrawn(2).well(3, 9);
		assertThat(story.on(9).state().episode()).isNull();
		assertThat(story.on(9).state().out()).anyMatch((range) -> range.contains(Story.day(0)));
	}

	@Test
	void aReadingInASeriesWithoutABaselineIsLeftOutApartFromAHundred() {
		Story story = Story.ofAKnownAthlete().morning(0, (e) -> e.by(Method.COUNT_60, Posture.SITTING).rhr(70.0));
		assertThat(story.on(0).rhr().dev()).isNull();
		assertThat(story.clearance(0)).isEqualTo(Clearance.FULL_TRAINING);
		Story fast = Story.ofAKnownAthlete().morning(0, (e) -> e.by(Method.COUNT_60, Posture.SITTING).rhr(100.0));
		assertThat(fast.clearance(0)).isEqualTo(Clearance.REST);
	}

	@Test
	void aStandEndsByAReadingLessThanFourAboveAndNotByMissingMornings() {
		Story story = Story.ofAKnownAthlete().rhr(0, 59).withoutRhr(1).rhr(6, 54).rhr(7, 53.9);
		assertThat(story.on(0).rhr().above()).isNotNull();
		assertThat(story.on(5).rhr().above()).as("through missing mornings").isNotNull();
		assertThat(story.on(6).rhr().above()).as("4 above").isNotNull();
		assertThat(story.on(7).rhr().above()).isNull();
	}

	private static Story relapsed(Symptom symptom) {
		Story story = Story.ofAKnownAthlete().sick(0, symptom, Severity.MILD).well(1, 4).runs(3, 4);
		return story.sick(5, symptom, Severity.MILD);
	}

	private static PathName path(Story story, int day) {
		return story.on(day).state().episode().path();
	}

	/** The day a story's episode closed. */
	private static final class LocalDates {

		private final int day;

		LocalDates(Story story) {
			int last = 1;
			while (story.on(last).state().episode() != null) {
				last++;
			}
			this.day = last;
		}

	}

}
