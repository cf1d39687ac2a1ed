package org.fallow.training.core;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;

import org.fallow.rules.Intensity;
import org.fallow.training.core.LoggedWeek.Outcome;
import org.fallow.training.core.PlannedSession.Kind;
import org.fallow.training.core.PlannedSession.Terrain;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/** Worked out by hand. */
class LoggedWeekTest {

	private static final LocalDate MONDAY = LocalDate.of(2026, 3, 16);

	private static final LocalDate SUNDAY = MONDAY.plusDays(6);

	private static final LocalDate AFTER = MONDAY.plusDays(7);

	@ParameterizedTest
	@CsvSource({ "40, EASY, DONE", "48, EASY, DONE", "32, EASY, DONE", "49, EASY, CHANGED", "31, EASY, CHANGED",
			"40, STEADY, CHANGED", "40, , CHANGED", ", EASY, CHANGED" })
	void tellsDoneFromChanged(@Nullable Integer minutes, @Nullable Intensity intensity, Outcome outcome) {
		LoggedWeek week = LoggedWeek.of(week(easy(1)),
				List.of(new LoggedRun(MONDAY.plusDays(1), minutes, 3.0, intensity)), Set.of(), AFTER);
		assertThat(week.sessions().get(0).outcome()).isEqualTo(outcome);
		assertThat(week.run()).isOne();
	}

	@Test
	void tellsMissedFromExcusedAndAhead() {
		LoggedWeek week = LoggedWeek.of(week(easy(1), easy(2), easy(3), easy(5)), List.of(), Set.of(MONDAY.plusDays(2)),
				MONDAY.plusDays(3));
		assertThat(week.sessions()).extracting(LoggedWeek.Logged::outcome)
			.containsExactly(Outcome.MISSED, Outcome.EXCUSED, Outcome.AHEAD, Outcome.AHEAD);
		assertThat(week.due()).isOne();
		assertThat(week.run()).isZero();
	}

	@Test
	void pairsTheFirstWithTheFirst() {
		LoggedWeek week = LoggedWeek.of(week(easy(1), easy(1)),
				List.of(run(1, 40, 3.0), run(1, 10, 2.0), run(1, 20, 2.0)), Set.of(), AFTER);
		assertThat(week.sessions()).extracting(LoggedWeek.Logged::outcome)
			.containsExactly(Outcome.DONE, Outcome.CHANGED);
		assertThat(week.minutesRun()).isEqualTo(70);
		assertThat(week.minutesProgrammed()).isEqualTo(80);
	}

	/**
	 * Foster's sums: 3 · 100, 5 · 90, 4 · 50, 6 · 100, 3 · 50; recomputed with
	 * WeekLoadTest's figures.
	 */
	@Test
	void sumsLoadMonotonyAndEnduranceMinutes() {
		List<LoggedRun> runs = List.of(run(0, 100, 3.0), run(2, 90, 5.0), run(3, 50, 4.0), run(5, 100, 6.0),
				run(6, 50, 3.0));
		LoggedWeek week = LoggedWeek.of(week(easy(1)), runs, Set.of(), AFTER);
		assertThat(week.load()).isEqualTo(300 + 450 + 200 + 600 + 150);
		assertThat(week.monotony()).isCloseTo(1.082232, within(1e-6));
		assertThat(week.enduranceMinutes()).isEqualTo(80 + 70 + 30 + 80 + 30);
		assertThat(LoggedWeek.of(week(easy(1)), runs, Set.of(), SUNDAY).monotony()).isNull();
		assertThat(LoggedWeek.of(week(easy(1)), List.of(run(0, 100, null)), Set.of(), AFTER).monotony()).isNull();
	}

	@Test
	void passesOverOtherWeeks() {
		assertThat(
				LoggedWeek.of(week(easy(1)), List.of(run(-1, 40, 3.0), run(7, 40, 3.0)), Set.of(), AFTER).minutesRun())
			.isZero();
	}

	@Test
	void holdsAnEmptyWeek() {
		LoggedWeek week = LoggedWeek.of(week(), List.of(), Set.of(), AFTER);
		assertThat(week.sessions()).isEmpty();
		assertThat(week.due()).isZero();
		assertThat(week.monotony()).isNull();
	}

	private static ProgrammeWeek week(PlannedSession... sessions) {
		return new ProgrammeWeek(MONDAY, ProgrammeWeek.Kind.LOADING, List.of(sessions));
	}

	private static PlannedSession easy(int day) {
		return new PlannedSession("s", MONDAY.plusDays(day), Kind.EASY_RUN, Terrain.FLAT, null, "", "",
				List.of(Part.of(Part.Role.BLOCK, 2_400, Intensity.EASY)));
	}

	private static LoggedRun run(int day, int minutes, @Nullable Double rpe) {
		return new LoggedRun(MONDAY.plusDays(day), minutes, rpe, Intensity.EASY);
	}

}
