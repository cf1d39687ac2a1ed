package org.fallow.training.core;

import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

import org.fallow.training.core.UsualVolume.Basis;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** Worked out by hand. */
class UsualVolumeTest {

	/** A Wednesday; the week before it begins on 9 March. */
	private static final LocalDate ONSET = LocalDate.of(2026, 3, 18);

	private static final LocalDate MONDAY = LocalDate.of(2026, 3, 9);

	private final SortedMap<LocalDate, List<Integer>> runs = new TreeMap<>();

	/**
	 * Weeks of 100, 200, 300 and 440 minutes: the median is 250; longest 60, 110, 160,
	 * 230: 135.
	 */
	@Test
	void isTheMedianOfTheLastFourLoadingWeeks() {
		week(0, 40, 60);
		week(-1, 90, 110);
		week(-2, 140, 160);
		week(-4, 210, 230);
		week(-5, 500, 500);
		assertThat(usual(List.of(0, -1, -2, -4, -5), List.of(), null))
			.isEqualTo(new UsualVolume(250, 135, Basis.LOADING_WEEKS));
	}

	@Test
	void passesOverWeeksThatDoNotCount() {
		week(1, 300, 300);
		week(0, 50, 50);
		week(-1, 50, 50);
		week(-2, 50, 50);
		week(-3, 50, 50);
		week(-4, 90, 90);
		assertThat(usual(List.of(1, 0, -1, -2, -3, -4), List.of(MONDAY.plusDays(6)), null))
			.as("the week of the onset, and one with a day ill")
			.isEqualTo(new UsualVolume(100, 50, Basis.LOADING_WEEKS));
	}

	/** Back from Tuesday 17 March in sevens, the days away passed over. */
	@Test
	void isTakenFromTheLastHealthyDaysWhereLoadingWeeksAreFew() {
		for (int back = 1; back <= 31; back++) {
			this.runs.put(ONSET.minusDays(back), List.of((back == 5) ? 300 : 10));
		}
		assertThat(usual(List.of(0, -1), List.of(ONSET.minusDays(4), ONSET.minusDays(5), ONSET.minusDays(6)), null))
			.isEqualTo(new UsualVolume(70, 10, Basis.HEALTHY_DAYS));
	}

	@Test
	void needsARunInEachOfTheSevens() {
		for (int back = 1; back <= 27; back += 13) {
			this.runs.put(ONSET.minusDays(back), List.of(60));
		}
		assertThat(usual(List.of(), List.of(), null).basis()).isEqualTo(Basis.UNKNOWN);
		UsualVolume stated = UsualVolume.stated(180, 70);
		assertThat(usual(List.of(), List.of(), stated)).isEqualTo(stated);
	}

	@Test
	void isUnknownWhereNothingWasRun() {
		assertThat(usual(List.of(0, -1, -2, -3), List.of(), null)).isEqualTo(UsualVolume.unknown());
	}

	@Test
	void addsTheRunsOfADay() {
		for (int week = 0; week > -4; week--) {
			this.runs.put(MONDAY.plusWeeks(week), List.of(30, 25));
		}
		assertThat(usual(List.of(0, -1, -2, -3), List.of(), null))
			.isEqualTo(new UsualVolume(55, 30, Basis.LOADING_WEEKS));
	}

	@Test
	void refusesWhatCannotBe() {
		assertThatIllegalArgumentException().isThrownBy(() -> UsualVolume.stated(60, 61));
		assertThatIllegalArgumentException().isThrownBy(() -> UsualVolume.stated(-1, -1));
		assertThatIllegalArgumentException().isThrownBy(() -> UsualVolume.stated(10_081, 60));
		assertThat(UsualVolume.stated(0, 0).weekMinutes()).isZero();
	}

	private UsualVolume usual(List<Integer> loading, List<LocalDate> unhealthy, UsualVolume stated) {
		return UsualVolume.of(ONSET, loading.stream().map(MONDAY::plusWeeks).toList(), this.runs, unhealthy, stated);
	}

	private void week(int apart, int... minutes) {
		for (int i = 0; i < minutes.length; i++) {
			this.runs.put(MONDAY.plusWeeks(apart).plusDays(2L * i), List.of(minutes[i]));
		}
	}

}
