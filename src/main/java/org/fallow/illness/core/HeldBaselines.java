package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.baseline.HrvBaseline;
import org.fallow.baseline.RhrBaseline;
import org.fallow.baseline.Series;
import org.jspecify.annotations.Nullable;

/**
 * Baselines outside an episode: after a close the held ones go on until enough newer
 * eligible readings exist, at most for the rules' days.
 */
final class HeldBaselines {

	private HeldBaselines() {
	}

	static @Nullable RhrBaseline rhr(State state, Windows windows, Series series, LocalDate day) {
		Held held = heldRhr(state, windows, series, day);
		return (held != null) ? held.rhr() : windows.rhrBaseline(day, series);
	}

	/** What is held for a series since the last close; null once released. */
	static @Nullable Held heldRhr(State state, Windows windows, Series series, LocalDate day) {
		return holdsRhr(state, windows, series, day) ? state.afterClose() : null;
	}

	private static boolean holdsRhr(State state, Windows windows, Series series, LocalDate day) {
		Held held = state.afterClose();
		LocalDate closedOn = state.closedOn();
		return held != null && closedOn != null && held.rhr() != null && series.equals(held.series())
				&& !day.isBefore(held.asOf()) && isRecent(windows, closedOn, day)
				&& windows.countRhr(closedOn, day, series) < windows.rules().baseline().releaseReadings();
	}

	static @Nullable HrvBaseline hrv(State state, Windows windows, Series series, LocalDate day) {
		Held held = state.afterClose();
		LocalDate closedOn = state.closedOn();
		boolean holds = held != null && closedOn != null && held.hrv() != null && series.equals(held.hrvSeries())
				&& !day.isBefore(held.asOf()) && isRecent(windows, closedOn, day)
				&& windows.countHrv(closedOn, day, series) < windows.rules().baseline().releaseReadings();
		return (holds && held != null) ? held.hrv() : windows.hrvBaseline(day, series);
	}

	private static boolean isRecent(Windows windows, LocalDate closedOn, LocalDate day) {
		return day.toEpochDay() - closedOn.toEpochDay() < windows.rules().baseline().releaseDays();
	}

	/** The baselines an episode of this onset holds. */
	static Held forOnset(State state, Windows windows, LocalDate onset, LocalDate day) {
		LocalDate asOf = onset.minusDays(windows.rules().baseline().marginDays());
		Series series = windows.latestRhrSeries(day);
		Series hrvSeries = windows.latestHrvSeries(day);
		return new Held(asOf, series, (series == null) ? null : rhr(state, windows, series, asOf), hrvSeries,
				(hrvSeries == null) ? null : hrv(state, windows, hrvSeries, asOf), null);
	}

	/** The same baselines of the same day, after a fact in their window came in. */
	static Held anew(Held held, Windows windows) {
		return new Held(held.asOf(), held.series(), windows.rhrBaseline(held.asOf(), held.series()), held.hrvSeries(),
				windows.hrvBaseline(held.asOf(), held.hrvSeries()), held.working());
	}

	/** The same baselines for another onset or other facts, for the same series. */
	static Held again(Held held, State state, Windows windows, LocalDate onset) {
		LocalDate asOf = onset.minusDays(windows.rules().baseline().marginDays());
		Series series = held.series();
		Series hrvSeries = held.hrvSeries();
		return new Held(asOf, series, (series == null) ? null : rhr(state, windows, series, asOf), hrvSeries,
				(hrvSeries == null) ? null : hrv(state, windows, hrvSeries, asOf), held.working());
	}

}
