package org.fallow.illness.core;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

import org.fallow.entry.Activity;
import org.fallow.entry.Fact;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.RrSeries;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** Bad input to the core: a clear error or a defined result, never a wrong clearance. */
class BadInputTest {

	private static final RuleBook BOOK = RuleBook.of(DefaultRules.ruleSet());

	private static final Recorded RECORDED = Story.ofANewcomer().recorded(0, 6);

	private static MorningEntry morning(Double rhr, Double rmssd, Double temperature) {
		return new MorningEntry(Story.DAY_0, RECORDED, Method.STRAP, Posture.LYING, rhr, rmssd, false, temperature,
				List.of(), false, FeverMedicine.NONE, null, Feels.WELL, null, List.of(), null);
	}

	private static SessionLog session(Integer minutes, Double rpe) {
		return new SessionLog("s", Story.DAY_0, RECORDED, Activity.RUN, minutes, rpe, null, List.of(), false, null);
	}

	@ParameterizedTest
	@ValueSource(doubles = { Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -50, -0.0, 0 })
	void refusesAMorningWithANumberThatIsNone(double bad) {
		assertThatIllegalArgumentException().isThrownBy(() -> morning(bad, null, null)).withMessageContaining("heart");
		assertThatIllegalArgumentException().isThrownBy(() -> morning(null, bad, null)).withMessageContaining("RMSSD");
		assertThatIllegalArgumentException().isThrownBy(() -> morning(null, null, bad)).withMessageContaining("temp");
	}

	@Test
	void takesTheEdgesOfAMorningsNumbersAndNoMore() {
		assertThat(morning(20.0, 300.0, 45.0).rhrBpm()).isEqualTo(20);
		assertThat(morning(220.0, 0.001, 30.0).rhrBpm()).isEqualTo(220);
		assertThatIllegalArgumentException().isThrownBy(() -> morning(19.9, null, null));
		assertThatIllegalArgumentException().isThrownBy(() -> morning(220.1, null, null));
		assertThatIllegalArgumentException().isThrownBy(() -> morning(null, 300.1, null));
		assertThatIllegalArgumentException().isThrownBy(() -> morning(null, null, 29.9));
		assertThatIllegalArgumentException().isThrownBy(() -> morning(null, null, 45.1));
	}

	@ParameterizedTest
	@ValueSource(doubles = { Double.NaN, Double.POSITIVE_INFINITY, -0.1, 10.1 })
	void refusesASessionWithAnEffortThatIsNone(double bad) {
		assertThatIllegalArgumentException().isThrownBy(() -> session(30, bad));
	}

	@ParameterizedTest
	@ValueSource(ints = { -1, 1441, Integer.MAX_VALUE, Integer.MIN_VALUE })
	void refusesASessionWithMinutesThatAreNone(int bad) {
		assertThatIllegalArgumentException().isThrownBy(() -> session(bad, 3.0));
	}

	@ParameterizedTest
	@ValueSource(doubles = { 0, -800, Double.NaN, Double.POSITIVE_INFINITY })
	void refusesAnRrIntervalThatIsNone(double bad) {
		assertThatIllegalArgumentException().isThrownBy(() -> RrSeries.of(800, bad, 810)).withMessageContaining("2");
		assertThatIllegalArgumentException().isThrownBy(RrSeries::of);
		assertThatIllegalArgumentException().isThrownBy(() -> RrSeries.of(800));
	}

	@Test
	void assessesNothingOfAnAthleteOfWhomNothingIsKnown() {
		assertThat(Course.of(new Timeline(List.of()), BOOK, Story.DAY_0)).isEmpty();
		assertThat(Course.nothing(BOOK, Story.DAY_0).clearance()).isEqualTo(Clearance.NOT_ASSESSED);
		assertThat(Story.ofAKnownAthlete().lived(-29)).as("before the first fact").isEmpty();
	}

	/**
	 * Neither spread nor SD is ever nought, so nothing is divided and no band is empty.
	 */
	@Test
	void livesWithAConstantSeries() {
		Story story = Story.ofANewcomer();
		for (int day = 0; day < 40; day++) {
			story.morning(day, (e) -> e.rhr(50.0).rmssd(60.0));
		}
		DayAssessment day = story.on(39);
		assertThat(day.clearance()).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(day.rhr().spread()).isEqualTo(1);
		assertThat(day.hrv().sd()).isEqualTo(0.05);
		assertThat(story.rhr(40, 53).clearance(40)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(story.rhr(41, 60).clearance(41)).isEqualTo(Clearance.REST);
	}

	@Test
	void sortsFactsThatComeInAnyOrder() {
		List<DayAssessment> expected = anIllness().lived(25);
		List<Fact> facts = new ArrayList<>(anIllness().timeline().facts());
		for (int seed = 1; seed <= 5; seed++) {
			Collections.shuffle(facts, new Random(seed));
			assertThat(Course.of(new Timeline(facts), BOOK, Story.day(25))).isEqualTo(expected);
		}
	}

	@Test
	void decidesTheSameForAMorningSentTwice() {
		Story twice = anIllness();
		for (Fact fact : anIllness().timeline().facts()) {
			twice.add(fact);
		}
		assertThat(twice.lived(25)).extracting(DayAssessment::clearance)
			.isEqualTo(anIllness().lived(25).stream().map(DayAssessment::clearance).toList());
		assertThat(twice.stage(25)).isEqualTo(anIllness().stage(25));
		assertThat(twice.on(25).rhr().n()).as("a morning is one reading").isEqualTo(anIllness().on(25).rhr().n());
	}

	/** A fact recorded on its day cannot speak of a later one and work at once. */
	@Test
	void doesNotUseAMorningOfTheFutureBeforeItsDay() {
		Story story = Story.ofAKnownAthlete().well(0);
		story.add(morningOf(3, 0));
		assertThat(story.clearance(0)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(story.stage(0)).isEqualTo(-1);
		assertThat(story.clearance(3)).as("its day has come").isEqualTo(Clearance.REST);
	}

	private static MorningEntry morningOf(int day, int recordedOn) {
		return new Story.Entry().symptom(Symptom.FATIGUE, Severity.MILD)
			.at(day, Story.ofANewcomer().recorded(recordedOn, 8));
	}

	private static Story anIllness() {
		return Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE).well(2, 25).runs(3, 20);
	}

}
