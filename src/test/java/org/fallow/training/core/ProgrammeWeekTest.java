package org.fallow.training.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.rules.Intensity;
import org.fallow.training.core.PlannedSession.Kind;
import org.fallow.training.core.PlannedSession.Terrain;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class ProgrammeWeekTest {

	private static final LocalDate MONDAY = LocalDate.of(2026, 3, 16);

	/**
	 * 6 times 60 s with 90 s between: 360 s hard, 450 s easy; with 10 + 5 minutes 1,710
	 * s.
	 */
	@Test
	void addsMinutesAndIntensities() {
		PlannedSession session = session(MONDAY,
				List.of(Part.of(Part.Role.WARM_UP, 600, Intensity.EASY),
						new Part(Part.Role.BLOCK, 6, 300, 60, Intensity.VO2MAX, 90),
						Part.of(Part.Role.COOL_DOWN, 300, Intensity.EASY)));
		assertThat(session.minutes()).isEqualTo(29);
		assertThat(session.secondsBy()).containsEntry(Intensity.EASY, 1_350).containsEntry(Intensity.VO2MAX, 360);
		assertThat(session.secondsAboveEasy()).isEqualTo(360);
		assertThat(session.hardest()).isEqualTo(Intensity.VO2MAX);
		ProgrammeWeek week = new ProgrammeWeek(MONDAY, ProgrammeWeek.Kind.LOADING,
				List.of(easy(MONDAY.plusDays(6), 2_400), session));
		assertThat(week.minutes()).isEqualTo(69);
		assertThat(week.secondsBy()).containsEntry(Intensity.EASY, 3_750);
		assertThat(week.sessions()).first().isEqualTo(session);
	}

	@Test
	void mayBeEmpty() {
		ProgrammeWeek week = new ProgrammeWeek(MONDAY, ProgrammeWeek.Kind.UNLOADING, List.of());
		assertThat(week.minutes()).isZero();
		assertThat(week.secondsBy()).isEmpty();
	}

	@Test
	void countsStridesAsNoHardDay() {
		assertThat(session(MONDAY, List.of(Part.of(Part.Role.BLOCK, 60, Intensity.STRIDES))).isHard()).isFalse();
		assertThat(session(MONDAY, List.of(Part.of(Part.Role.BLOCK, 60, Intensity.STEADY))).isHard()).isTrue();
	}

	@ParameterizedTest
	@ValueSource(ints = { 1, 59, 86_401, 100_000 })
	void refusesASessionOfNoMinuteOrMoreThanADay(int seconds) {
		assertThatIllegalArgumentException().isThrownBy(() -> {
			int half = Math.max(1, seconds / 2);
			session(MONDAY,
					(seconds > 86_400)
							? List.of(Part.of(Part.Role.BLOCK, half, Intensity.EASY),
									Part.of(Part.Role.BLOCK, seconds - half, Intensity.EASY))
							: List.of(Part.of(Part.Role.BLOCK, seconds, Intensity.EASY)));
		});
	}

	@Test
	void takesASessionOfAThousandMinutes() {
		assertThat(easy(MONDAY, 60_000).minutes()).isEqualTo(1_000);
	}

	@Test
	void refusesDaysThatAreNotOfTheWeek() {
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new ProgrammeWeek(MONDAY.plusDays(1), ProgrammeWeek.Kind.LOADING, List.of()));
		for (LocalDate day : List.of(MONDAY.minusDays(1), MONDAY.plusDays(7))) {
			assertThatIllegalArgumentException()
				.isThrownBy(() -> new ProgrammeWeek(MONDAY, ProgrammeWeek.Kind.LOADING, List.of(easy(day, 600))));
		}
	}

	@Test
	void refusesPartsOutOfRange() {
		assertThatIllegalArgumentException().isThrownBy(() -> Part.of(Part.Role.BLOCK, 0, Intensity.EASY));
		assertThatIllegalArgumentException().isThrownBy(() -> Part.of(Part.Role.BLOCK, 60, Intensity.REST));
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new Part(Part.Role.BLOCK, 0, null, 60, Intensity.EASY, 0));
		assertThatIllegalArgumentException().isThrownBy(() -> new Part(Part.Role.BLOCK, 1, 0, 60, Intensity.EASY, 0));
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new Part(Part.Role.BLOCK, 1, null, 60, Intensity.EASY, -1));
	}

	private static PlannedSession easy(LocalDate day, int seconds) {
		return session(day, List.of(Part.of(Part.Role.BLOCK, seconds, Intensity.EASY)));
	}

	private static PlannedSession session(LocalDate day, List<Part> parts) {
		return new PlannedSession("a", day, Kind.EASY_RUN, Terrain.FLAT, null, "", "", parts);
	}

}
