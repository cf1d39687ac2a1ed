package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.Fact;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.RuleBook;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/** What slips do to days: the decision text, part "Slips". */
class SlipsTest {

	private static final Severity SEVERE = Severity.SEVERE;

	private static Story chestPain() {
		return Story.ofAKnownAthlete().adult().sick(0, Symptom.CHEST_PAIN, SEVERE);
	}

	private static Story slipOfChestPain(SlipTerms terms) {
		return chestPain().slip(0, Symptom.CHEST_PAIN, terms);
	}

	@Test
	void isHeldWithoutASlip() {
		assertThat(chestPain().clearance(0)).isEqualTo(Clearance.REFER);
	}

	@Test
	void takesHoldAndEpisodeWithIt() {
		DayAssessment day = slipOfChestPain(SlipTerms.UNTIL_ASKED).on(0);
		assertThat(day.clearance()).isEqualTo(Clearance.EASY_ONLY);
		assertThat(day.holding()).isFalse();
		assertThat(day.state().holds()).isEmpty();
		assertThat(day.state().episode()).isNull();
		assertThat(day.decisions()).isEmpty();
		assertThat(day.mark()).isEqualTo(Mark.NEITHER);
		assertThat(day.seen().slip()).isEqualTo("CHEST_PAIN");
	}

	/** A revision before the slip is part of it, one after it is not. */
	@Test
	void holdsTheSameTickedAgain() {
		Story story = slipOfChestPain(SlipTerms.UNTIL_ASKED).late(0, 0, (e) -> e.symptom(Symptom.CHEST_PAIN, SEVERE));
		assertThat(story.clearance(0)).isEqualTo(Clearance.EASY_ONLY);
		Story again = slipOfChestPain(SlipTerms.UNTIL_ASKED);
		again.add(new Story.Entry().symptom(Symptom.CHEST_PAIN, SEVERE).at(0, again.recorded(0, 9)));
		assertThat(again.clearance(0)).isEqualTo(Clearance.REFER);
		assertThat(again.clearance(1)).isEqualTo(Clearance.REFER);
	}

	@Test
	void staysEasyUntilACoachNotesHavingAsked() {
		Story story = slipOfChestPain(SlipTerms.UNTIL_ASKED).well(1, 20);
		assertThat(story.clearance(1)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.clearance(20)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.reasons(20)).containsExactly("reason.slip-unasked");
		assertThat(story.notices(20)).contains("advised.slip");
		assertThat(story.asked(20).clearance(20)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(story.clearance(19)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.notices(20)).doesNotContain("advised.slip");
	}

	@Test
	void staysEasyOnItsOwnDayThoughAsked() {
		assertThat(slipOfChestPain(SlipTerms.UNTIL_ASKED).asked(0).clearance(0)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(slipOfChestPain(SlipTerms.UNTIL_ASKED).asked(0).well(1).clearance(1))
			.isEqualTo(Clearance.FULL_TRAINING);
	}

	/** Of the three entries the last one's day is over first. */
	@Test
	void staysEasyForThreeMoreEntriesWhereNobodyCanAsk() {
		Story story = slipOfChestPain(SlipTerms.UNTIL_ENTRIES).well(1).well(3, 5);
		assertThat(story.clearance(1)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.clearance(2)).isEqualTo(Clearance.NOT_ASSESSED);
		assertThat(story.clearance(4)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.reasons(4)).containsExactly("reason.slip-entries");
		assertThat(story.clearance(5)).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void countsEntriesOnTheirOwnDayOnly() {
		Story story = slipOfChestPain(SlipTerms.UNTIL_ENTRIES).well(4);
		story.late(1, 4, (e) -> e).late(2, 4, (e) -> e).late(3, 4, (e) -> e).well(5);
		assertThat(story.clearance(5)).isEqualTo(Clearance.EASY_ONLY);
	}

	/** The entries of a year ago are not forgotten in a replay of the last months. */
	@Test
	void goesOnFromASlipOfLongAgo() {
		Story story = slipOfChestPain(SlipTerms.UNTIL_ENTRIES).well(1, 4).well(300);
		List<DayAssessment> whole = story.lived(300);
		assertThat(whole.get(whole.size() - 1).clearance()).isEqualTo(Clearance.FULL_TRAINING);
		State state = whole.get(whole.size() - 2).state();
		List<Fact> recent = story.timeline()
			.facts()
			.stream()
			.filter((f) -> f instanceof IllnessEvent || !f.day().isBefore(state.factsFrom()))
			.toList();
		assertThat(Course.from(state, new Timeline(recent, story.timeline().adultFrom()),
				RuleBook.of(DefaultRules.ruleSet()), Story.day(300)))
			.containsExactly(whole.get(whole.size() - 1));
	}

	@Test
	void isToldForSevenDays() {
		Story story = slipOfChestPain(SlipTerms.UNTIL_ASKED).asked(0).well(1, 7);
		assertThat(story.notices(0)).contains("advised.slip");
		assertThat(story.notices(6)).contains("advised.slip");
		assertThat(story.notices(7)).doesNotContain("advised.slip");
	}

	@Test
	void keepsItsMorningOutOfBaselines() {
		Story with = Story.ofAKnownAthlete()
			.sick(0, Symptom.SORE_THROAT, Severity.MILD)
			.slip(0, Symptom.SORE_THROAT, SlipTerms.AT_ONCE);
		assertThat(with.well(1).on(1).rhr().n())
			.isEqualTo(Story.ofAKnownAthlete().withoutRhr(0).well(1).on(1).rhr().n());
		assertThat(Story.ofAKnownAthlete().well(0, 1).on(1).rhr().n()).isEqualTo(with.on(1).rhr().n() + 1);
	}

	@Test
	void takesOneOfTwoHoldsOnly() {
		Story story = slipOfChestPain(SlipTerms.UNTIL_ASKED).session(0, 3.0, Intensity.EASY, AfterSession.FAINTING);
		assertThat(story.clearance(0)).isEqualTo(Clearance.REFER);
		assertThat(story.on(0).state().holds()).extracting(HoldState::cause).containsExactly("FAINTING");
		assertThat(slipOfChestPain(SlipTerms.UNTIL_ASKED).hold(0).clearance(0)).isEqualTo(Clearance.REFER);
	}

	@Test
	void leavesTheOtherRedFlagOfTheSameEntry() {
		Story story = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.symptom(Symptom.CHEST_PAIN, SEVERE).symptom(Symptom.FAINTING, SEVERE))
			.slip(0, Symptom.CHEST_PAIN, SlipTerms.UNTIL_ASKED);
		assertThat(story.clearance(0)).isEqualTo(Clearance.REFER);
		assertThat(story.on(0).state().holds()).extracting(HoldState::cause).containsExactly("FAINTING");
	}

	@Test
	void takesATickOffAnAfterSessionList() {
		Story story = Story.ofAKnownAthlete().well(0).session(0, 3.0, Intensity.EASY, AfterSession.PALPITATIONS);
		String key = ((SessionLog) story.timeline().facts().get(29)).key();
		assertThat(story.clearance(0)).isEqualTo(Clearance.REFER);
		story.add(new IllnessEvent.Slip(Story.day(0), story.recorded(0, 20), Tick.of(key, AfterSession.PALPITATIONS),
				SlipTerms.UNTIL_ASKED));
		assertThat(story.clearance(0)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.well(1).clearance(1)).isEqualTo(Clearance.EASY_ONLY);
	}

	/** Fatigue on the morning of a gate: without the slip a relapse. */
	@Test
	void takesARelapseWithItWhereACoachAccepts() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, 1, Symptom.FATIGUE, Severity.MODERATE)
			.well(2, 5)
			.sick(6, Symptom.VOMITING, SEVERE);
		assertThat(story.on(6).decisions()).extracting(Decision::kind).contains(Decision.Kind.RELAPSE);
		story.slip(6, Symptom.VOMITING, SlipTerms.IF_ACCEPTED);
		assertThat(story.stage(6)).isZero();
		assertThat(story.notices(6)).contains("advised.slip-waits").doesNotContain("advised.slip");
		DayAssessment accepted = story.slipAccepted(6).on(6);
		assertThat(accepted.decisions()).isEmpty();
		assertThat(accepted.state().episode().stage()).isEqualTo(1);
		assertThat(accepted.mark()).isEqualTo(Mark.NEITHER);
		assertThat(accepted.notices()).extracting((n) -> n.code()).contains("advised.slip");
	}

	@Test
	void isNotAcceptedOnALaterDay() {
		Story story = Story.ofAKnownAthlete()
			.sick(0, 1, Symptom.FATIGUE, Severity.MODERATE)
			.well(2, 5)
			.sick(6, Symptom.VOMITING, SEVERE)
			.slip(6, Symptom.VOMITING, SlipTerms.IF_ACCEPTED)
			.well(7)
			.slipAccepted(7);
		assertThat(story.stage(7)).isZero();
	}

	/** All that the gate asks for is met, and it stays shut on the day of a slip. */
	@Test
	void opensNoGate() {
		assertThat(Story.ofAKnownAthlete().sick(0, 1, Symptom.FATIGUE, Severity.MODERATE).well(2, 3).stage(3))
			.isEqualTo(1);
		Story slipped = Story.ofAKnownAthlete()
			.sick(0, 1, Symptom.FATIGUE, Severity.MODERATE)
			.well(2)
			.sick(3, Symptom.SORE_THROAT, Severity.MILD)
			.slip(3, Symptom.SORE_THROAT, SlipTerms.IF_ACCEPTED)
			.slipAccepted(3);
		assertThat(slipped.stage(3)).isZero();
		assertThat(slipped.criterion(3, "no-slip").shuts()).isTrue();
		assertThat(slipped.well(4).stage(4)).isEqualTo(1);
	}

	@Test
	void isBadStillWithAnotherSymptom() {
		Story story = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.symptom(Symptom.VOMITING, SEVERE).symptom(Symptom.SORE_THROAT, Severity.MILD))
			.slip(0, Symptom.VOMITING, SlipTerms.AT_ONCE);
		assertThat(story.on(0).mark()).isEqualTo(Mark.BAD);
		assertThat(story.clearance(0)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.stage(0)).isEqualTo(-1);
	}

	@Test
	void isOfTheDayItIsToldOn() {
		LocalDate day = Story.day(0);
		Story story = Story.ofAKnownAthlete();
		assertThatThrownBy(() -> new IllnessEvent.Slip(day.minusDays(1), story.recorded(0, 8),
				Tick.of(Symptom.CHEST_PAIN), SlipTerms.UNTIL_ASKED))
			.isInstanceOf(IllegalArgumentException.class);
		assertThatThrownBy(() -> new Tick(null, "HEADACHE")).isInstanceOf(IllegalArgumentException.class);
		assertThatThrownBy(() -> new Tick("s1", "STIFF_NECK")).isInstanceOf(IllegalArgumentException.class);
	}

}
