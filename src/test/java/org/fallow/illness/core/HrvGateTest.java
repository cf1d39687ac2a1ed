package org.fallow.illness.core;

import java.util.Objects;

import org.fallow.baseline.HrvBaseline;
import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.RhrBaseline;
import org.fallow.entry.Method;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * Heart-rate variability at the gate into Stage 1, and the baseline it is held against.
 * The athlete's RMSSD is 65 ms on 28 quiet mornings: ln 65 = 4.174, the SD is the least
 * there is, 0.05, so that a mean below 4.124 is suppressed. Ill on days 0 and 1.
 */
class HrvGateTest {

	private static Story known() {
		return rmssd(Story.ofANewcomer(), 65, -28, -1);
	}

	private static Story ill() {
		return known().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
	}

	private static Story rmssd(Story story, double ms, int from, int to) {
		for (int day = from; day <= to; day++) {
			story.morning(day, (e) -> e.rmssd(ms));
		}
		return story;
	}

	/** Closed on day 24, with variability as before. */
	private static Story closed() {
		return rmssd(ill(), 65, 2, 24).runs(3, 20);
	}

	private static HrvBaseline held(Story story, int day) {
		return Objects.requireNonNull(story.episode(day).held().hrv());
	}

	@Test
	void keepsTheGateShutWhileSuppressed() {
		Story story = rmssd(ill(), 50, 2, 3);
		Criterion hrv = story.criterion(3, "hrv");
		assertThat(hrv.state()).isEqualTo(CriterionState.NOT_MET);
		assertThat(hrv.observed()).as("three of 65, two of 50").containsExactly("4.07");
		assertThat(hrv.required()).containsExactly("4.12");
		assertThat(story.stage(3)).isZero();
	}

	@Test
	void opensWithVariabilityAsBefore() {
		Story story = rmssd(ill(), 65, 2, 3);
		assertThat(story.criterion(3, "hrv").state()).isEqualTo(CriterionState.MET);
		assertThat(story.criterion(3, "hrv").observed()).containsExactly("4.17");
		assertThat(story.stage(3)).isEqualTo(1);
	}

	/** At least 3 readings, else not available, which shuts nothing. */
	@Test
	void isNotAvailableBelowThreeReadingsAndShutsNothing() {
		Story story = ill().sick(2, 4, Symptom.FATIGUE, Severity.MODERATE);
		rmssd(story, 40, 5, 6);
		assertThat(story.on(6).hrv().values()).hasSize(2);
		assertThat(story.criterion(6, "hrv").state()).isEqualTo(CriterionState.NOT_AVAILABLE);
		assertThat(story.stage(6)).isEqualTo(1);
	}

	@Test
	void isNotAvailableWithoutAnyReading() {
		Story story = Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE).well(2, 3);
		assertThat(story.criterion(3, "hrv").state()).isEqualTo(CriterionState.NOT_AVAILABLE);
		assertThat(story.criterion(3, "hrv").shuts()).isFalse();
	}

	/**
	 * From tomorrow every number is at baseline, but the seven mornings still hold the
	 * two low ones until day 8, and one of them on day 9.
	 */
	@Test
	void namesTheDayPastReadingsAllowAtTheEarliest() {
		Story story = rmssd(ill(), 50, 2, 3);
		assertThat(story.criterion(3, "hrv").earliest()).isEqualTo(Story.day(9));
		assertThat(story.on(3).gate().earliest()).isEqualTo(Story.day(9));
		rmssd(story, 65, 4, 9);
		assertThat(story.stage(8)).isZero();
		assertThat(story.stage(9)).isEqualTo(1);
	}

	@Test
	void namesTheSameDayForWhoMeasuresNothingElse() {
		Story story = Story.ofANewcomer();
		for (int day = -28; day <= 3; day++) {
			double ms = (day < 2) ? 65 : 50;
			boolean sick = day == 0 || day == 1;
			story.morning(day, (e) -> {
				Story.Entry entry = e.rhr(null).rmssd(ms);
				return sick ? entry.symptom(Symptom.FATIGUE, Severity.MODERATE) : entry;
			});
		}
		assertThat(story.episode(3).tracked()).isFalse();
		assertThat(story.on(3).gate().earliest()).isEqualTo(Story.day(9));
	}

	/** Another method is another series: it says nothing about the one held. */
	@Test
	void foreseesNoReadingOfAnotherMethod() {
		Story story = rmssd(ill(), 50, 2, 2);
		story.morning(3, (e) -> e.by(Method.WORN));
		assertThat(story.on(3).hrv().flag()).isEqualTo(HrvFlag.SUPPRESSED);
		assertThat(story.criterion(3, "hrv").earliest()).as("fewer than three readings are left")
			.isEqualTo(Story.day(5));
	}

	@Test
	void holdsTheBaselineOfThreeDaysBeforeTheOnset() {
		Story story = rmssd(ill(), 75, 2, 10);
		assertThat(held(story, 10).n()).as("days -28 to -4").isEqualTo(25);
		assertThat(story.on(10).hrv().mean()).isCloseTo(Math.log(65), within(1e-9));
	}

	@Test
	void computesItAnewWhenAFactInItsWindowIsCorrected() {
		Story story = rmssd(ill(), 65, 2, 2);
		story.late(-10, 2, (e) -> e.rmssd(65.0).symptom(Symptom.SNEEZING, Severity.MILD));
		assertThat(held(story, 2).n()).isEqualTo(24);
	}

	@Test
	void holdsItAfterTheCloseUntilSevenNewerReadings() {
		Story story = closed();
		rmssd(story, 75, 25, 31);
		assertThat(story.stage(24)).isEqualTo(-1);
		assertThat(story.on(30).hrv().n()).isEqualTo(25);
		assertThat(story.on(30).hrv().mean()).isCloseTo(Math.log(65), within(1e-9));
		assertThat(story.on(31).hrv().n()).as("the latest fourteen").isEqualTo(14);
		assertThat(story.on(31).hrv().mean()).isGreaterThan(Math.log(65) + 0.05);
	}

	@Test
	void holdsBothBaselinesForSixtyDaysAtMost() {
		Story story = closed();
		assertThat(story.on(83).hrv().n()).isEqualTo(25);
		assertThat(story.on(83).rhr().n()).isEqualTo(25);
		assertThat(story.on(84).hrv().mean()).isNull();
		assertThat(story.on(84).rhr().baseline()).isNull();
	}

	@Test
	void holdsItForItsOwnSeriesOnly() {
		Story story = closed();
		for (int day = 25; day <= 28; day++) {
			story.morning(day, (e) -> e.by(Method.WORN).rmssd(30.0));
		}
		assertThat(story.on(28).hrv().n()).isZero();
		assertThat(story.on(28).hrv().flag()).isNull();
	}

	@Test
	void holdsNothingInAnIllnessOfBeforeTheBaseline() {
		Story story = closed().late(-10, 25, (e) -> e.rmssd(65.0).symptom(Symptom.FATIGUE, Severity.MODERATE));
		assertThat(story.episode(25).firstOnset()).isEqualTo(Story.day(-10));
		assertThat(held(story, 25).n()).as("days -28 to -14").isEqualTo(15);
	}

	/** A second illness before seven newer readings goes on with what was held. */
	@Test
	void holdsTheFirstBaselineThroughASecondIllness() {
		Story story = closed().sick(26, 27, Symptom.FATIGUE, Severity.MODERATE);
		rmssd(story, 65, 28, 52).runs(29, 46);
		RhrBaseline rhr = Objects.requireNonNull(story.episode(28).held().rhr());
		assertThat(rhr.n()).isEqualTo(25);
		assertThat(held(story, 28).n()).isEqualTo(25);
		assertThat(story.stage(51)).isEqualTo(-1);
		assertThat(story.on(52).rhr().n()).isEqualTo(25);
		assertThat(story.on(52).hrv().n()).isEqualTo(25);
	}

}
