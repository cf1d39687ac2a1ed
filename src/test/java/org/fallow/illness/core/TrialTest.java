package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.Trial.Change;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.PublishedPaths;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleEdit;
import org.fallow.rules.RuleHash;
import org.fallow.rules.RuleSet;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class TrialTest {

	private static final RuleSet OURS = DefaultRules.ruleSet();

	@Test
	void findsNoDifferenceUnderTheSameRules() {
		Trial trial = trial(returned(), OURS, -28, 40);
		assertThat(trial.differs()).isFalse();
		assertThat(trial.days()).isEqualTo(69);
		assertThat(trial.before()).isEqualTo(trial.after());
		assertThat(trial.episodes()).singleElement().satisfies((pair) -> {
			assertThat(pair.before().opened()).isEqualTo(Story.day(0));
			assertThat(pair.before().firstStage()).isEqualTo(Story.day(3));
			assertThat(pair.before().fullTraining()).isEqualTo(Story.day(17));
			assertThat(pair.before().closed()).isEqualTo(Story.day(24));
		});
	}

	@Test
	void tellsDaysAndGatesThatWouldHaveMoved() {
		RuleSet elliott = OURS.with(PublishedPaths.of(Protocol.ELLIOTT_2020, PathName.THREE_WEEK));
		Trial trial = trial(returned(), elliott, -28, 40);
		assertThat(trial.changes()).contains(
				new Change(Story.day(3), Story.day(9), Clearance.EASY_ONLY, Clearance.REST),
				new Change(Story.day(16), Story.day(16), Clearance.EASY_ONLY, Clearance.FULL_TRAINING));
		assertThat(trial.stricterDays()).isEqualTo(7);
		assertThat(trial.looserDays()).isEqualTo(1);
		assertThat(trial.episodes()).singleElement().satisfies((pair) -> {
			assertThat(pair.after().firstStage()).isEqualTo(Story.day(10));
			assertThat(pair.after().fullTraining()).isEqualTo(Story.day(16));
			assertThat(pair.after().closed()).isEqualTo(Story.day(30));
			assertThat(pair.returnsBy()).isNegative();
		});
	}

	@Test
	void tellsAnIllnessThatWouldBeNew() {
		Story cold = Story.ofAKnownAthlete().sick(0, Symptom.RUNNY_NOSE, Severity.MILD).well(1, 10);
		RuleSet sooner = RuleEdit.of(OURS, Map.of("/opening/coldMornings", "1")).rules();
		Trial trial = trial(cold, sooner, -28, 10);
		assertThat(trial.episodes()).singleElement().satisfies((pair) -> {
			assertThat(pair.before()).isNull();
			assertThat(pair.after().opened()).isEqualTo(Story.day(0));
		});
		assertThat(trial(cold, OURS, -28, 10).episodes()).isEmpty();
	}

	@Test
	void comparesNoDayBeforeTheFirst() {
		Trial trial = trial(returned(), OURS, 30, 40);
		assertThat(trial.days()).isEqualTo(11);
		assertThat(trial.episodes()).isEmpty();
	}

	@Test
	void knowsNothingOfAnAthleteWithoutFacts() {
		Trial trial = trial(Story.ofANewcomer(), OURS, -28, 10);
		assertThat(trial.days()).isZero();
		assertThat(trial.differs()).isFalse();
	}

	@Test
	void replaysTheRulesAsTheyWereDayByDay() {
		RuleSet elliott = OURS.with(PublishedPaths.of(Protocol.ELLIOTT_2020, PathName.THREE_WEEK));
		RuleBook book = new RuleBook(List.of(RuleBook.of(OURS).entries().get(0),
				new RuleBook.Entry(Story.day(5), RuleHash.of(elliott), elliott)));
		Trial trial = Trial.of(returned().timeline(), book, RuleBook.of(OURS), Story.day(-28), Story.day(40));
		assertThat(trial.differs()).as("the open episode kept its own rules").isFalse();
	}

	/** Fatigue on days 0 and 1, an easy run a day from then on. */
	private static Story returned() {
		Story story = Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE);
		for (int day = 2; day <= 40; day++) {
			story.well(day).run(day);
		}
		return story;
	}

	private static Trial trial(Story story, RuleSet draft, int from, int to) {
		LocalDate first = Story.day(from);
		return Trial.of(story.timeline(), RuleBook.of(OURS), RuleBook.of(draft), first, Story.day(to));
	}

}
