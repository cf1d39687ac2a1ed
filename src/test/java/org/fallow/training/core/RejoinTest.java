package org.fallow.training.core;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.training.core.PlannedSession.Kind;
import org.fallow.training.core.PlannedSession.Terrain;
import org.fallow.training.core.Rejoin.RaceAdvice;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/** Worked out by hand. */
class RejoinTest {

	/** A Monday. */
	private static final LocalDate ONSET = LocalDate.of(2026, 3, 16);

	/**
	 * Three-week path, gate into Stage 1 on 20 March at the earliest: a week later Stage
	 * 2, another week later Stage 3, on Friday 3 April. Missed are the Tuesdays 17, 24
	 * and 31 March; the second week unloads.
	 */
	@Test
	void looksAheadFromTheSickbed() {
		Rejoin rejoin = Rejoin.of(ill(), LocalDate.of(2026, 3, 20), weeks(null)).orElseThrow();
		assertThat(rejoin.fullTraining()).isEqualTo(LocalDate.of(2026, 4, 3));
		assertThat(rejoin.week()).isEqualTo(LocalDate.of(2026, 3, 30));
		assertThat(rejoin.keySessionsMissed()).isEqualTo(3);
		assertThat(rejoin.unloadingOnTheWay()).isTrue();
		assertThat(rejoin.raceDay()).isNull();
		assertThat(rejoin.advice()).isNull();
	}

	/** Stage 2 began on 27 March; its gate opens on 3 April at the earliest. */
	@Test
	void looksAheadFromAStage() {
		assertThat(Rejoin.of(in(2, LocalDate.of(2026, 3, 27)), LocalDate.of(2026, 4, 3), weeks(null))
			.orElseThrow()
			.fullTraining()).isEqualTo(LocalDate.of(2026, 4, 3));
		assertThat(Rejoin.of(in(1, LocalDate.of(2026, 3, 20)), LocalDate.of(2026, 3, 27), weeks(null))
			.orElseThrow()
			.fullTraining()).isEqualTo(LocalDate.of(2026, 4, 3));
		assertThat(Rejoin.of(in(3, LocalDate.of(2026, 4, 3)), LocalDate.of(2026, 4, 10), weeks(null))
			.orElseThrow()
			.fullTraining()).isEqualTo(LocalDate.of(2026, 4, 3));
	}

	/** Full training from 3 April. */
	@ParameterizedTest
	@CsvSource({ "2026-04-02, 0, MOVE", "2026-04-09, 6, MOVE", "2026-04-10, 7, FOR_FUN", "2026-04-16, 13, FOR_FUN",
			"2026-04-17, 14, AS_PLANNED" })
	void tellsWhatTheRaceMeans(LocalDate race, int days, RaceAdvice advice) {
		Rejoin rejoin = Rejoin.of(in(2, LocalDate.of(2026, 3, 27)), LocalDate.of(2026, 4, 3), weeks(race))
			.orElseThrow();
		assertThat(rejoin.raceDay()).isEqualTo(race);
		assertThat(rejoin.daysBeforeRace()).isEqualTo(days);
		assertThat(rejoin.advice()).isEqualTo(advice);
	}

	/**
	 * The return began on 20 March: the last day ill is the 19th, 14 days on is 2 April.
	 */
	@ParameterizedTest
	@CsvSource({ "2026-04-02, true", "2026-04-03, false" })
	void asksForTheCoachsWordFirst(LocalDate race, boolean ask) {
		assertThat(Rejoin.of(in(1, LocalDate.of(2026, 3, 20)), LocalDate.of(2026, 3, 27), weeks(race))
			.orElseThrow()
			.askFirst()).isEqualTo(ask);
	}

	@Test
	void asksNoMoreOnceTheWordIsGiven() {
		LocalDate race = LocalDate.of(2026, 4, 2);
		Position agreed = in(1, LocalDate.of(2026, 3, 20)).agreed(Set.of(race));
		assertThat(Rejoin.of(agreed, LocalDate.of(2026, 3, 27), weeks(race)).orElseThrow().askFirst()).isFalse();
	}

	@Test
	void passesOverARaceOfThePast() {
		assertThat(
				Rejoin.of(in(2, LocalDate.of(2026, 3, 27)), LocalDate.of(2026, 4, 3), weeks(LocalDate.of(2026, 3, 21)))
					.orElseThrow()
					.raceDay())
			.isNull();
	}

	@Test
	void saysNothingWithoutADay() {
		assertThat(Rejoin.of(ill(), null, weeks(null))).isEmpty();
		assertThat(Rejoin.of(Position.well(ONSET, Clearance.FULL_TRAINING), ONSET, weeks(null))).isEmpty();
		Position held = new Position(ONSET, Clearance.REFER, true, ill().back(), ONSET, null);
		assertThat(Rejoin.of(held, ONSET, weeks(null))).isEmpty();
	}

	/** The programme ends in mid-return: what it does not have is not missed. */
	@Test
	void endsWithTheProgramme() {
		Rejoin rejoin = Rejoin.of(ill(), LocalDate.of(2026, 3, 20), weeks(null).subList(0, 1)).orElseThrow();
		assertThat(rejoin.keySessionsMissed()).isOne();
		assertThat(rejoin.unloadingOnTheWay()).isFalse();
		assertThat(Rejoin.of(ill(), LocalDate.of(2026, 3, 20), List.of()).orElseThrow().keySessionsMissed()).isZero();
	}

	private static Position ill() {
		return new Position(ONSET.plusDays(2), Clearance.REST, false,
				new Position.Return(0, ONSET, null, DefaultRules.ruleSet().path(PathName.THREE_WEEK), 28), ONSET, null);
	}

	private static Position in(int stage, LocalDate since) {
		return new Position(since, Clearance.EASY_ONLY, false, new Position.Return(stage, since,
				LocalDate.of(2026, 3, 20), DefaultRules.ruleSet().path(PathName.THREE_WEEK), 28), ONSET, null);
	}

	private static List<ProgrammeWeek> weeks(@Nullable LocalDate race) {
		return IntStream.range(0, 6).mapToObj((week) -> week(ONSET.plusWeeks(week), week == 1, race)).toList();
	}

	private static ProgrammeWeek week(LocalDate monday, boolean unloading, @Nullable LocalDate race) {
		List<PlannedSession> sessions = List.of(session(monday.plusDays(1), Kind.KEY_SESSION),
				session(monday.plusDays(3), Kind.EASY_RUN));
		boolean here = race != null && !race.isBefore(monday) && race.isBefore(monday.plusDays(7));
		return new ProgrammeWeek(monday, unloading ? ProgrammeWeek.Kind.UNLOADING : ProgrammeWeek.Kind.LOADING,
				here ? List.of(sessions.get(0), sessions.get(1), session(race, Kind.RACE)) : sessions);
	}

	private static PlannedSession session(LocalDate day, Kind kind) {
		return new PlannedSession(kind + day.toString(), day, kind, Terrain.FLAT, null, "", "",
				List.of(Part.of(Part.Role.BLOCK, 2_400, Intensity.EASY)));
	}

}
