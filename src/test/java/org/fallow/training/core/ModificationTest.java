package org.fallow.training.core;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Set;

import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.training.core.PlannedSession.Kind;
import org.fallow.training.core.PlannedSession.Terrain;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * Worked out by hand from the stage table of the design: 50 % of the usual week and long
 * run, at most 60 minutes, the first run at most 30, easy, in Stage 1; all of it, easy
 * with strides, in Stage 2; as programmed in Stage 3.
 */
class ModificationTest {

	/** A Tuesday. */
	private static final LocalDate TODAY = LocalDate.of(2026, 3, 17);

	private static final UsualVolume USUAL = UsualVolume.stated(240, 90);

	@Test
	void leavesTheProgrammeToWhoIsWell() {
		ModifiedSession key = one(key(0), Position.well(TODAY, Clearance.FULL_TRAINING));
		assertThat(key.version()).isEqualTo(Version.AS_PROGRAMMED);
		assertThat(key.instead()).isEqualTo(key.programmed());
		assertThat(key.reasons()).isEmpty();
		assertThat(key.effortCeiling()).isNull();
	}

	@ParameterizedTest
	@CsvSource({ "EASY_ONLY, EASY, AS_PROGRAMMED", "NOT_ASSESSED, NOT_ASSESSED, AS_PROGRAMMED", "REST, REST, EASY",
			"REFER, CLINICIAN_FIRST, EASY", "FULL_TRAINING, AS_PROGRAMMED, AS_PROGRAMMED" })
	void tellsTodayAndTheDaysAfterApart(Clearance clearance, Version today, Version tomorrow) {
		List<ModifiedSession> made = Modification.of(List.of(key(0), key(1)), Position.well(TODAY, clearance), USUAL,
				List.of());
		assertThat(made).extracting(ModifiedSession::version).containsExactly(today, tomorrow);
	}

	/** Ill up to 10 March: a race on the 24th, the fourteenth day after, asks first. */
	@ParameterizedTest
	@CsvSource({ "6, false, EASY", "7, false, EASY", "8, false, AS_PROGRAMMED", "7, true, AS_PROGRAMMED" })
	void racesSoonAfterAnIllnessOnTheCoachsWordOnly(int day, boolean agreed, Version version) {
		Position closed = new Position(TODAY, Clearance.FULL_TRAINING, false, null, LocalDate.of(2026, 3, 10), null);
		LocalDate race = TODAY.plusDays(day);
		Position position = agreed ? closed.agreed(Set.of(race)) : closed;
		assertThat(one(race(day), position).version()).isEqualTo(version);
	}

	@Test
	void takesTheWordForOneRaceForNoOther() {
		Position closed = new Position(TODAY, Clearance.FULL_TRAINING, false, null, LocalDate.of(2026, 3, 10), null);
		assertThat(one(race(6), closed.agreed(Set.of(TODAY.plusDays(7)))).version()).isEqualTo(Version.EASY);
	}

	@ParameterizedTest
	@EnumSource(value = Clearance.class, names = "FULL_TRAINING", mode = EnumSource.Mode.EXCLUDE)
	void racesOnNoWordWhereTheMorningDoesNotClear(Clearance clearance) {
		Position closed = new Position(TODAY, clearance, false, null, LocalDate.of(2026, 3, 10), null);
		assertThat(one(race(0), closed.agreed(Set.of(TODAY))).instead()).isNull();
	}

	@Test
	void racesOnNoWordBeforeTheLastStage() {
		assertThat(one(race(0), in(2, 3).agreed(Set.of(TODAY))).hardest().compareTo(Intensity.STRIDES))
			.isLessThanOrEqualTo(0);
		assertThat(one(race(0), in(3, 3)).version()).isEqualTo(Version.EASY);
		assertThat(one(race(0), in(3, 3).agreed(Set.of(TODAY))).version()).isEqualTo(Version.AS_PROGRAMMED);
	}

	@Test
	void runsEasyAtTheSameTimeAndPlace() {
		ModifiedSession key = one(key(0), Position.well(TODAY, Clearance.EASY_ONLY));
		PlannedSession instead = key.instead();
		assertThat(instead).isNotNull();
		assertThat(instead.time()).isEqualTo(LocalTime.of(18, 30));
		assertThat(instead.place()).isEqualTo("Track");
		assertThat(instead.minutes()).isEqualTo(45);
		assertThat(instead.hardest()).isEqualTo(Intensity.EASY);
	}

	@Test
	void runsNoRaceOnAnEasyDay() {
		assertThat(one(race(0), Position.well(TODAY, Clearance.EASY_ONLY)).version()).isEqualTo(Version.REST);
	}

	@ParameterizedTest
	@EnumSource(Clearance.class)
	void leavesAHoldToAClinician(Clearance clearance) {
		Position held = new Position(TODAY, clearance, true, back(3, 0), TODAY.minusDays(30), null);
		assertThat(Modification.of(List.of(easy(0, 40), easy(20, 40)), held, USUAL, List.of()))
			.allMatch((session) -> session.version() == Version.CLINICIAN_FIRST && session.minutes() == 0);
	}

	@Test
	void restsWhileIll() {
		Position ill = new Position(TODAY, Clearance.EASY_ONLY, false,
				new Position.Return(0, TODAY, null, path(PathName.THREE_WEEK), 28), TODAY, null);
		assertThat(Modification.of(List.of(easy(0, 40), easy(9, 40)), ill, USUAL, List.of()))
			.allMatch((session) -> session.version() == Version.REST);
	}

	@Test
	void restsWhileAway() {
		Position away = new Position(TODAY, Clearance.FULL_TRAINING, false, null, null, TODAY.plusDays(2));
		List<ModifiedSession> made = Modification.of(List.of(easy(2, 40), easy(3, 40)), away, USUAL, List.of());
		assertThat(made).extracting(ModifiedSession::version).containsExactly(Version.REST, Version.AS_PROGRAMMED);
	}

	/** 90 minutes usual long run: half is 45; the first run 30; half the week is 120. */
	@Test
	void keepsStageOneShortAndEasy() {
		List<ModifiedSession> made = Modification.of(List.of(key(0), easy(2, 60), easy(4, 60), longRun(5, 90)),
				in(1, 0), USUAL, List.of());
		assertThat(made).extracting(ModifiedSession::minutes).containsExactly(30, 45, 45, 0);
		assertThat(made).allMatch((session) -> session.hardest().compareTo(Intensity.EASY) <= 0);
		assertThat(made).extracting(ModifiedSession::version)
			.containsExactly(Version.EASY, Version.SHORTENED, Version.SHORTENED, Version.REST);
		assertThat(made.get(0).effortCeiling()).isEqualTo(3.0);
		assertThat(made.get(0).heartRateShare()).isEqualTo(0.75);
		assertThat(made.get(0).reasons()).containsExactly(Message.of("session.why.intensity", "EASY"),
				Message.of("session.why.first-run", 30));
		assertThat(made.get(3).reasons()).containsExactly(Message.of("session.why.week-full"));
	}

	@Test
	void countsAnySevenDaysSinceTheReturnBegan() {
		Position stage = in(1, 6);
		List<DoneRun> done = List.of(run(-20, 200), run(-6, 30), run(-3, 45));
		List<ModifiedSession> made = Modification.of(List.of(easy(0, 60), easy(1, 60), easy(4, 60)), stage, USUAL,
				done);
		assertThat(made).extracting(ModifiedSession::minutes).containsExactly(45, 30, 45);
	}

	@Test
	void keepsTheSixtyMinutesOfStageOne() {
		List<ModifiedSession> made = Modification.of(List.of(longRun(0, 120)), in(1, 3), UsualVolume.stated(600, 180),
				List.of(run(-2, 30)));
		assertThat(made.get(0).minutes()).isEqualTo(60);
		assertThat(made.get(0).version()).isEqualTo(Version.SHORTENED);
	}

	/**
	 * Elliott 2020, as in the stage table: days 1 and 2 at most 15, day 3 30, day 4 45.
	 */
	@ParameterizedTest
	@CsvSource({ "0, 0, 15", "1, 1, 15", "2, 2, 30", "3, 3, 45", "4, 4, 60", "4, 0, 15", "4, 1, 15", "4, 2, 30" })
	void keepsTheFirstRunsOfTheLongPathShort(int dayInStage, int daysRun, int most) {
		Position stage = new Position(TODAY, Clearance.EASY_ONLY, false, new Position.Return(1,
				TODAY.minusDays(dayInStage), TODAY.minusDays(dayInStage), path(PathName.LONG), 28), TODAY.minusDays(20),
				null);
		List<DoneRun> done = java.util.stream.IntStream.range(0, daysRun)
			.mapToObj((i) -> run(i - dayInStage, 10))
			.toList();
		List<ModifiedSession> made = Modification.of(List.of(easy(0, 90)), stage, UsualVolume.stated(800, 200), done);
		assertThat(made.get(0).minutes()).isEqualTo(most);
	}

	@Test
	void runsStridesForIntervalsInStageTwo() {
		ModifiedSession key = one(key(0), in(2, 2));
		assertThat(key.version()).isEqualTo(Version.STRIDES);
		assertThat(key.minutes()).isEqualTo(45);
		assertThat(PartsText.write(key.instead().parts()))
			.isEqualTo("37 min easy; 6 x 20 s strides, 1 min between; 1 min easy");
		assertThat(key.effortCeiling()).isEqualTo(4.0);
	}

	@Test
	void leavesAnEasyRunOfStageTwoAsItIs() {
		assertThat(one(easy(0, 60), in(2, 2)).version()).isEqualTo(Version.AS_PROGRAMMED);
		ModifiedSession longRun = one(longRun(0, 120), in(2, 2));
		assertThat(longRun.minutes()).isEqualTo(90);
		assertThat(longRun.version()).isEqualTo(Version.SHORTENED);
	}

	@ParameterizedTest
	@EnumSource(value = Kind.class, names = { "RACE", "TEST" })
	void contestsNothingBeforeTheLastStage(Kind kind) {
		PlannedSession contest = session(0, kind, List.of(Part.of(Part.Role.BLOCK, 1200, Intensity.RACE_PACE)));
		for (int stage = 1; stage <= 2; stage++) {
			ModifiedSession made = one(contest, in(stage, 2));
			assertThat(made.version()).isEqualTo(Version.EASY);
			assertThat(made.reasons().get(0)).isEqualTo(Message.of("session.why.no-contest"));
		}
	}

	/** The last day ill is the one before the return began. */
	@ParameterizedTest
	@CsvSource({ "12, EASY", "13, EASY", "14, AS_PROGRAMMED" })
	void asksForAWordBeforeARaceSoonAfter(int daysSinceReturn, Version version) {
		assertThat(one(race(0), in(3, daysSinceReturn)).version()).isEqualTo(version);
		Position closed = new Position(TODAY, Clearance.FULL_TRAINING, false, null,
				TODAY.minusDays(daysSinceReturn + 1L), null);
		assertThat(one(race(0), closed).version()).isEqualTo(version);
	}

	@Test
	void runsNoTwoHardDaysRunningOnTheWayBack() {
		List<ModifiedSession> made = Modification.of(List.of(key(0), key(1), key(3)), in(3, 20), USUAL, List.of());
		assertThat(made).extracting(ModifiedSession::version)
			.containsExactly(Version.AS_PROGRAMMED, Version.EASY, Version.AS_PROGRAMMED);
		assertThat(one(key(0), in(3, 20), new DoneRun(TODAY.minusDays(1), 40, Intensity.THRESHOLD)).version())
			.isEqualTo(Version.EASY);
		assertThat(one(key(0), in(3, 20), new DoneRun(TODAY.minusDays(1), 40, null)).version())
			.as("what was not stated may have been hard")
			.isEqualTo(Version.EASY);
		assertThat(one(key(0), in(3, 20), run(-1, 40)).version()).isEqualTo(Version.AS_PROGRAMMED);
	}

	@Test
	void lightensTheFirstHardSessionAfterALongTime() {
		Position longAway = new Position(TODAY, Clearance.FULL_TRAINING, false,
				new Position.Return(3, TODAY.minusDays(1), TODAY.minusDays(20), path(PathName.THREE_WEEK), 28),
				TODAY.minusDays(31), null);
		List<ModifiedSession> made = Modification.of(List.of(key(0), key(2)), longAway, USUAL, List.of());
		assertThat(made).extracting(ModifiedSession::version).containsExactly(Version.SHORTENED, Version.AS_PROGRAMMED);
		assertThat(PartsText.write(made.get(0).instead().parts()))
			.isEqualTo("15 min easy; 3 x 100 s vo2max, 1 min between; 15 min easy");
		Position shorter = new Position(TODAY, Clearance.FULL_TRAINING, false,
				new Position.Return(3, TODAY.minusDays(1), TODAY.minusDays(20), path(PathName.THREE_WEEK), 28),
				TODAY.minusDays(29), null);
		assertThat(one(key(0), shorter).version()).isEqualTo(Version.AS_PROGRAMMED);
	}

	@Test
	void staysEasyInTheLastStageOnAnEasyDay() {
		Position easyDay = new Position(TODAY, Clearance.EASY_ONLY, false,
				new Position.Return(3, TODAY.minusDays(3), TODAY.minusDays(20), path(PathName.THREE_WEEK), 28),
				TODAY.minusDays(25), null);
		List<ModifiedSession> made = Modification.of(List.of(key(0), key(2)), easyDay, USUAL, List.of());
		assertThat(made).extracting(ModifiedSession::version).containsExactly(Version.EASY, Version.AS_PROGRAMMED);
	}

	@Test
	void takesSharesOfEachSessionWhereNothingIsUsual() {
		List<ModifiedSession> made = Modification.of(List.of(easy(0, 50), longRun(5, 150)), in(1, 3),
				UsualVolume.unknown(), List.of(run(-2, 20)));
		assertThat(made).extracting(ModifiedSession::minutes).containsExactly(25, 60);
	}

	@Test
	void leavesOutWhatWouldBeTooShort() {
		assertThat(one(easy(0, 18), in(1, 3), UsualVolume.unknown(), run(-2, 20)).version()).isEqualTo(Version.REST);
	}

	@Test
	void tellsNothingBeforeTheMorningOfAReturn() {
		Position unknown = new Position(TODAY, Clearance.NOT_ASSESSED, false,
				new Position.Return(2, TODAY.minusDays(3), TODAY.minusDays(10), path(PathName.THREE_WEEK), 28),
				TODAY.minusDays(15), null);
		ModifiedSession made = one(key(0), unknown);
		assertThat(made.version()).isEqualTo(Version.NOT_ASSESSED);
		assertThat(made.hardest()).isEqualTo(Intensity.EASY);
		assertThat(made.reasons().get(0)).isEqualTo(Message.of("session.why.not-assessed"));
	}

	@Test
	void refusesASessionOfThePast() {
		assertThatIllegalArgumentException().isThrownBy(() -> one(easy(-1, 40), in(1, 3)));
	}

	@Test
	void neverMakesMoreOfASession() {
		PlannedSession session = easy(0, 40);
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new ModifiedSession(session, Version.EASY, easy(0, 41), List.of(), null, null));
		assertThatIllegalArgumentException().isThrownBy(() -> new ModifiedSession(session, Version.EASY,
				session(0, Kind.EASY_RUN, List.of(Part.of(Part.Role.BLOCK, 600, Intensity.STEADY))), List.of(), null,
				null));
	}

	private static ModifiedSession one(PlannedSession session, Position position, DoneRun... done) {
		return one(session, position, USUAL, done);
	}

	private static ModifiedSession one(PlannedSession session, Position position, UsualVolume usual, DoneRun... done) {
		return Modification.of(List.of(session), position, usual, List.of(done)).get(0);
	}

	/**
	 * In a stage, the return having begun some days ago, which is when the stage began
	 * too.
	 */
	private static Position in(int stage, int days) {
		return new Position(TODAY, (stage < 3) ? Clearance.EASY_ONLY : Clearance.FULL_TRAINING, false,
				back(stage, days), TODAY.minusDays(days + 5L), null);
	}

	private static Position.Return back(int stage, int days) {
		return new Position.Return(stage, TODAY.minusDays(days), TODAY.minusDays(days), path(PathName.THREE_WEEK), 28);
	}

	private static org.fallow.rules.RuleSet.Path path(PathName name) {
		return DefaultRules.ruleSet().path(name);
	}

	/** 15 + 6 · 100 s + 5 · 60 s + 15 = 45 minutes. */
	private static PlannedSession key(int days) {
		return session(days, Kind.KEY_SESSION,
				List.of(Part.of(Part.Role.WARM_UP, 900, Intensity.EASY),
						new Part(Part.Role.BLOCK, 6, null, 100, Intensity.VO2MAX, 60),
						Part.of(Part.Role.COOL_DOWN, 900, Intensity.EASY)));
	}

	private static PlannedSession race(int days) {
		return session(days, Kind.RACE, List.of(Part.of(Part.Role.BLOCK, 1200, Intensity.RACE_PACE)));
	}

	private static PlannedSession easy(int days, int minutes) {
		return session(days, Kind.EASY_RUN, List.of(Part.of(Part.Role.BLOCK, minutes * 60, Intensity.EASY)));
	}

	private static PlannedSession longRun(int days, int minutes) {
		return session(days, Kind.LONG_RUN, List.of(Part.of(Part.Role.BLOCK, minutes * 60, Intensity.EASY)));
	}

	private static PlannedSession session(int days, Kind kind, List<Part> parts) {
		return new PlannedSession("s" + days, TODAY.plusDays(days), kind, Terrain.FLAT, LocalTime.of(18, 30), "Track",
				"", parts);
	}

	private static DoneRun run(int days, int minutes) {
		return new DoneRun(TODAY.plusDays(days), minutes, Intensity.EASY);
	}

}
