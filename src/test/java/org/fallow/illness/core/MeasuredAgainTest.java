package org.fallow.illness.core;

import org.fallow.baseline.RhrFlag;
import org.fallow.entry.DeviceChange;
import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * Measuring again on the same morning, the count by finger and a clinician's own figure,
 * from the decision text (Facts, the table of flags) and the safer readings. The known
 * athlete has a baseline of 50, spread 1 and a line of 4: high from 60, very high from
 * 70.
 */
class MeasuredAgainTest {

	private static boolean tells(Story story, int day, String code) {
		return story.on(day).notices().stream().map(Message::code).anyMatch(code::equals);
	}

	private static boolean says(Story story, int day, String code) {
		return story.on(day).reasons().stream().map(Message::code).anyMatch(code::equals);
	}

	@ParameterizedTest
	@CsvSource({ "68, 57, RAISED, EASY_ONLY, NEITHER", "68, 50, WITHIN, EASY_ONLY, NEITHER",
			"68, 59.9, RAISED, EASY_ONLY, BAD", "68, 60, HIGH, REST, BAD", "68, 68, HIGH, REST, BAD",
			"68, 72, VERY_HIGH, REST, BAD", "72, 50, WITHIN, EASY_ONLY, NEITHER", "104, 50, WITHIN, EASY_ONLY, NEITHER",
			"104, 99, VERY_HIGH, REST, BAD", "68, 40, LOW, EASY_ONLY, NEITHER" })
	void decidesByTheSecond(double first, double second, RhrFlag flag, Clearance clearance, Mark mark) {
		Story story = Story.ofAKnownAthlete().rhr(0, first).rested(0, second);
		DayAssessment day = story.on(0);
		assertThat(day.rhr().reading()).isEqualTo(second);
		assertThat(day.rhr().flag()).isEqualTo(flag);
		assertThat(day.clearance()).isEqualTo(clearance);
		assertThat(day.mark()).isEqualTo(mark);
		assertThat(says(story, 0, "reason.rhr-again")).isTrue();
		assertThat(tells(story, 0, "advised.measured-again")).isTrue();
		assertThat(day.rhr().repeat().entered().bpm()).as("the first is kept").isEqualTo(first);
	}

	@Test
	void leavesAHighFirstAloneWithoutASecond() {
		Story story = Story.ofAKnownAthlete().rhr(0, 68);
		assertThat(story.clearance(0)).isEqualTo(Clearance.REST);
		assertThat(story.on(0).rhr().repeat()).isNull();
	}

	/** The stand, the kept flag and the next mornings know the second only. */
	@Test
	void goesOnFromTheSecond() {
		Story story = Story.ofAKnownAthlete().rhr(0, 68).rested(0, 51).withoutRhr(1);
		assertThat(story.on(0).rhr().above()).isNull();
		assertThat(story.clearance(1)).isEqualTo(Clearance.FULL_TRAINING);
		Story pair = Story.ofAKnownAthlete().rhr(0, 68).rested(0, 54).rhr(1, 54);
		assertThat(pair.on(1).rhr().starts()).as("54 and 54").isTrue();
		Story without = Story.ofAKnownAthlete().rhr(0, 68).rested(0, 51).rhr(1, 54);
		assertThat(without.on(1).rhr().starts()).as("51 and 54").isFalse();
	}

	@Test
	void entersBaselinesByTheSecondOnly() {
		Story story = Story.ofAKnownAthlete();
		for (int day = 0; day < 27; day++) {
			story.rhr(day, 68).rested(day, 50);
		}
		assertThat(story.on(27).rhr().baseline()).isEqualTo(50);
		assertThat(story.on(27).rhr().line().highest()).allMatch((bpm) -> bpm <= 51);
	}

	@Test
	void staysWithTheFirstWhereTheSecondCannotBeCompared() {
		Story story = Story.ofAKnownAthlete().rhr(0, 68).rested(0, Method.WORN, 50);
		assertThat(story.clearance(0)).isEqualTo(Clearance.REST);
		assertThat(story.on(0).rhr().reading()).isEqualTo(68);
		Story newcomer = Story.ofANewcomer().morning(0, (e) -> e.by(Method.STRAP).rhr(104.0)).rested(0, 70);
		assertThat(newcomer.clearance(0)).as("neither has a baseline").isEqualTo(Clearance.EASY_ONLY);
		Story high = Story.ofAKnownAthlete().rhr(0, 68).rested(0, Method.WORN, 101);
		assertThat(high.on(0).rhr().flag()).isEqualTo(RhrFlag.VERY_HIGH);
	}

	/** What was measured beside another reading lifts nothing any more. */
	@Test
	void standsBesideTheReadingItWasMeasuredAfter() {
		Story raised = Story.ofAKnownAthlete().rhr(0, 68).rested(0, 50);
		raised.add(new Story.Entry().rhr(59.0).at(0, raised.recorded(0, 8)));
		assertThat(raised.on(0).rhr().reading()).isEqualTo(59);
		assertThat(raised.clearance(0)).as("above the line").isEqualTo(Clearance.EASY_ONLY);
		assertThat(raised.on(0).rhr().above()).isNotNull();
		Story well = Story.ofAKnownAthlete().rhr(0, 68).rested(0, 50);
		well.add(new Story.Entry().rhr(50.0).at(0, well.recorded(0, 8)));
		assertThat(well.clearance(0)).as("not undone by a correction").isEqualTo(Clearance.EASY_ONLY);
		assertThat(well.on(0).mark()).isEqualTo(Mark.NEITHER);
		Story high = Story.ofAKnownAthlete().rhr(0, 68).rested(0, 65);
		high.add(new Story.Entry().rhr(50.0).at(0, high.recorded(0, 8)));
		assertThat(high.clearance(0)).as("a high second stays").isEqualTo(Clearance.REST);
		Story same = Story.ofAKnownAthlete().rhr(0, 68).rested(0, 50);
		same.add(new Story.Entry().rhr(68.0).symptom(Symptom.RUNNY_NOSE, Severity.MILD).at(0, same.recorded(0, 8)));
		assertThat(same.on(0).rhr().reading()).as("symptoms added, same reading").isEqualTo(50);
	}

	@Test
	void takesTheHighestOfSeveral() {
		Story story = Story.ofAKnownAthlete().rhr(0, 68).rested(0, 65).rested(0, 50);
		assertThat(story.on(0).rhr().reading()).isEqualTo(65);
	}

	@Test
	void doesNothingForAMorningThatWasNotHighButIsNoGoodOne() {
		Story story = Story.ofAKnownAthlete().rhr(0, 59).rested(0, 50);
		assertThat(story.on(0).rhr().reading()).isEqualTo(59);
		assertThat(story.clearance(0)).isEqualTo(Clearance.EASY_ONLY);
	}

	@Test
	void leavesNoMarkAfterAnUnsureFirst() {
		Story story = Story.ofAKnownAthlete().morning(0, (e) -> e.rhr(68.0).unsure()).rested(0, 50);
		assertThat(story.clearance(0)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(story.on(0).rhr().reading()).isEqualTo(50);
	}

	@ParameterizedTest
	@CsvSource({ "LYING, 99, false, false", "LYING, 100, true, false", "LYING, 119, true, false",
			"LYING, 119.9, true, false", "LYING, 120, true, true", "SITTING, 120, true, true",
			"STANDING, 119, false, false", "STANDING, 120, true, false", "STANDING, 139, true, false",
			"STANDING, 140, true, true" })
	void asksForACountAtTheEdges(Posture posture, double bpm, boolean rest, boolean counted) {
		Story story = Story.ofANewcomer().morning(0, (e) -> e.posture(posture).rhr(bpm));
		assertThat(story.clearance(0)).isEqualTo(rest ? Clearance.REST : Clearance.FULL_TRAINING);
		assertThat(says(story, 0, "reason.rhr-uncounted")).isEqualTo(counted);
		assertThat(tells(story, 0, "advised.clinician-uncounted")).isEqualTo(counted);
		assertThat(tells(story, 0, "advised.ask-symptoms")).isTrue();
	}

	@ParameterizedTest
	@CsvSource({ "89.9, false", "90, true" })
	void asksAboutAReadingFromNinetyWithoutABaseline(double bpm, boolean asks) {
		assertThat(tells(Story.ofANewcomer().rhr(0, bpm), 0, "advised.ask-symptoms")).isEqualTo(asks);
	}

	@Test
	void isNotCalmedByLyingAsLongAsItIsNotCounted() {
		Story story = Story.ofAKnownAthlete().rhr(0, 124).rested(0, 50);
		assertThat(story.clearance(0)).isEqualTo(Clearance.REST);
		assertThat(story.on(0).mark()).isEqualTo(Mark.BAD);
	}

	@ParameterizedTest
	@CsvSource({ "LYING, 120", "SITTING, 124", "STANDING, 121" })
	void holdsOnARacingHeartCountedByFinger(Posture posture, double count) {
		Story story = Story.ofAKnownAthlete().rhr(0, 124).counted(0, posture, count).well(1);
		DayAssessment day = story.on(0);
		assertThat(day.clearance()).isEqualTo(Clearance.REFER);
		assertThat(day.clinic().standing()).extracting(HoldState::cause).containsExactly("PALPITATIONS");
		assertThat(day.seen().redFlag()).isTrue();
		assertThat(day.mark()).isEqualTo(Mark.BAD);
		assertThat(story.clearance(1)).as("until a clinician clears").isEqualTo(Clearance.REFER);
	}

	@Test
	void takesALowerCountAsTheReadingAndTheFirstAsUnsure() {
		Story story = Story.ofAKnownAthlete().morning(0, (e) -> e.rhr(180.0).rmssd(12.0)).counted(0, 56).well(1);
		DayAssessment day = story.on(0);
		assertThat(day.rhr().reading()).isEqualTo(56);
		assertThat(day.clearance()).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(day.hrv().values()).as("the same strap").isEmpty();
		assertThat(day.rhr().repeat().entered().bpm()).isEqualTo(180);
		assertThat(tells(story, 0, "advised.counted-lower")).isTrue();
		assertThat(story.on(1).rhr().baseline()).isEqualTo(50);
		Story fast = Story.ofAKnownAthlete().rhr(0, 180).counted(0, 119.9);
		assertThat(fast.clearance(0)).as("100 and more by finger").isEqualTo(Clearance.REST);
		assertThat(fast.rested(0, 50).clearance(0)).as("then lying").isEqualTo(Clearance.EASY_ONLY);
	}

	/** An episode opens with the series in use, not with a count of one morning. */
	@Test
	void keepsTheSeriesInUseThroughACount() {
		Story story = Story.ofAKnownAthlete()
			.morning(0, (e) -> e.rhr(180.0).symptom(Symptom.FATIGUE, Severity.MODERATE))
			.counted(0, 56);
		assertThat(story.episode(0).tracked()).isTrue();
		assertThat(story.episode(0).held().series().method()).isEqualTo(Method.STRAP);
	}

	@Test
	void isTakenOnItsOwnDayLyingOrByFinger() {
		Story story = Story.ofANewcomer();
		assertThatIllegalArgumentException().isThrownBy(() -> new MeasuredAgain(Story.day(0), story.recorded(1, 7),
				MeasuredAgain.Kind.RESTED, Method.STRAP, Posture.LYING, 57));
		assertThatIllegalArgumentException().isThrownBy(() -> new MeasuredAgain(Story.day(0), story.recorded(0, 7),
				MeasuredAgain.Kind.RESTED, Method.STRAP, Posture.SITTING, 57));
		assertThatIllegalArgumentException().isThrownBy(() -> new MeasuredAgain(Story.day(0), story.recorded(0, 7),
				MeasuredAgain.Kind.COUNTED, Method.STRAP, Posture.LYING, 57));
		assertThatIllegalArgumentException().isThrownBy(() -> story.rested(0, 19.9));
		assertThatIllegalArgumentException().isThrownBy(() -> story.rested(0, 220.1));
	}

	@Test
	void goesByAClinicianSOwnFigureFromItsRecordingOn() {
		Story story = Story.ofANewcomer().rhr(0, 104).figure(1, 105).rhr(1, 104).rhr(2, 105).figureEnded(3).rhr(3, 104);
		assertThat(story.clearance(0)).isEqualTo(Clearance.REST);
		assertThat(story.clearance(1)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(tells(story, 1, "advised.own-figure")).isTrue();
		assertThat(story.clearance(2)).isEqualTo(Clearance.REST);
		assertThat(story.clearance(3)).isEqualTo(Clearance.REST);
		assertThat(tells(story, 3, "advised.own-figure")).isFalse();
	}

	@Test
	void usesAFigureForItsOwnSeriesOnly() {
		Story other = Story.ofANewcomer().figure(0, 110).morning(0, (e) -> e.by(Method.WORN).rhr(104.0));
		assertThat(other.clearance(0)).isEqualTo(Clearance.REST);
		Story medicine = Story.ofANewcomer().figure(0, 110).medicine(1, true).rhr(1, 104);
		assertThat(medicine.clearance(1)).isEqualTo(Clearance.REST);
		Story device = Story.ofANewcomer().figure(0, 110).measuredAnew(1, DeviceChange.What.DEVICE, null).rhr(1, 104);
		assertThat(device.clearance(1)).isEqualTo(Clearance.REST);
		Story known = Story.ofAKnownAthlete().figure(0, 110).rhr(0, 104);
		assertThat(known.on(0).rhr().flag()).as("by its deviation").isEqualTo(RhrFlag.VERY_HIGH);
	}

	@Test
	void neverGoesBelowTheUsualFigureOrUpToTheCount() {
		assertThat(Story.ofANewcomer().figure(0, 90).rhr(0, 95).clearance(0)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(Story.ofANewcomer().figure(0, 119).rhr(0, 120).clearance(0)).isEqualTo(Clearance.REST);
		assertThatIllegalArgumentException().isThrownBy(() -> Story.ofANewcomer().figure(0, 119.1));
	}

}
