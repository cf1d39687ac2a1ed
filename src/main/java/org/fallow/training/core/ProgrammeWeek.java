package org.fallow.training.core;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import org.fallow.rules.Intensity;

/**
 * A week of a group's programme, Monday to Sunday.
 *
 * @param monday its first day
 * @param kind what the week is for
 * @param sessions in order of their days; may be empty
 */
public record ProgrammeWeek(LocalDate monday, Kind kind, List<PlannedSession> sessions) {

	private static final int DAYS = 7;

	/**
	 * Sorts the sessions by day, those of one day left in order, and checks the days.
	 * @throws IllegalArgumentException if it begins on another day, or a session is not
	 * of this week
	 */
	public ProgrammeWeek {
		Objects.requireNonNull(kind);
		if (monday.getDayOfWeek() != DayOfWeek.MONDAY) {
			throw new IllegalArgumentException("a week begins on a Monday, not on " + monday);
		}
		sessions = sessions.stream().sorted(Comparator.comparing(PlannedSession::day)).toList();
		for (PlannedSession session : sessions) {
			if (session.day().isBefore(monday) || !session.day().isBefore(monday.plusDays(DAYS))) {
				throw new IllegalArgumentException(session.day() + " is not in the week of " + monday);
			}
		}
	}

	/**
	 * The week's volume.
	 * @return minutes of all sessions
	 */
	public int minutes() {
		return this.sessions.stream().mapToInt(PlannedSession::minutes).sum();
	}

	/**
	 * How long is run at each intensity in the week.
	 * @return seconds by intensity, easiest first; those not run are absent
	 */
	public Map<Intensity, Integer> secondsBy() {
		Map<Intensity, Integer> seconds = new EnumMap<>(Intensity.class);
		this.sessions.forEach((session) -> session.secondsBy()
			.forEach((intensity, value) -> seconds.merge(intensity, value, Integer::sum)));
		return seconds;
	}

	/** What a week is for. */
	public enum Kind {

		/** Usual or growing volume. */
		LOADING,
		/** Less, so that it can bear fruit. */
		UNLOADING,
		/** With a test. */
		TEST,
		/** With a race. */
		RACE

	}

}
