package org.fallow.training.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.fallow.training.core.ProgrammeWeek;
import org.jspecify.annotations.Nullable;

/**
 * A week in the overview of a programme.
 *
 * @param monday its first day
 * @param kind what it is for; absent where nobody wrote it
 * @param minutes of all sessions
 * @param keySessions how many sessions are no easy runs
 * @param present whether it is the one shown
 */
public record WeekLine(LocalDate monday, ProgrammeWeek.@Nullable Kind kind, int minutes, long keySessions,
		boolean present) {

	static List<WeekLine> of(Map<LocalDate, ProgrammeWeek> weeks, LocalDate shown, int around) {
		List<WeekLine> lines = new ArrayList<>();
		for (int apart = -around; apart <= around; apart++) {
			LocalDate monday = shown.plusWeeks(apart);
			ProgrammeWeek week = weeks.get(monday);
			lines.add(new WeekLine(monday, (week == null) ? null : week.kind(), (week == null) ? 0 : week.minutes(),
					(week == null) ? 0 : week.sessions().stream().filter((one) -> one.kind().isKey()).count(),
					apart == 0));
		}
		return lines;
	}

}
