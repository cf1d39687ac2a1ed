package org.fallow.training;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

import org.fallow.entry.Absence;
import org.fallow.team.Role;
import org.fallow.training.core.DoneRun;
import org.fallow.training.core.Position;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.training.core.UsualVolume;
import org.jspecify.annotations.Nullable;

/** What an athlete in a return usually runs, from what is stored. */
final class UsualVolumes {

	private UsualVolumes() {
	}

	/**
	 * Before the present onset. After a long time away only what the coach stated since
	 * counts; read narrowly, nothing is known until then.
	 * @param known of the athlete
	 * @param position where the athlete stands
	 * @param weeks the programme of the athlete's group
	 */
	static UsualVolume of(Background known, Position position, GroupWeeks weeks) {
		Position.Return back = position.back();
		LocalDate onset = position.onset();
		if (back == null || onset == null) {
			return UsualVolume.unknown();
		}
		Statement said = known.statement();
		LocalDate longAway = onset.plusDays(back.longAwayDays());
		if (position.today().isAfter(longAway)) {
			LocalDate on = said.volumeOn();
			boolean anew = on != null && on.isAfter(longAway) && said.volumeBy() == Role.COACH;
			return Objects.requireNonNullElse(anew ? stated(said) : null, UsualVolume.unknown());
		}
		LocalDate from = onset.minusDays(Backgrounds.DAYS_BACK);
		return UsualVolume.of(onset, loading(weeks, from, onset), runs(known, from, onset),
				unhealthy(known, from, onset), stated(said));
	}

	private static @Nullable UsualVolume stated(Statement said) {
		Integer week = said.weekMinutes();
		Integer longRun = said.longMinutes();
		return (week == null || longRun == null) ? null : UsualVolume.stated(week, longRun);
	}

	private static List<LocalDate> loading(GroupWeeks weeks, LocalDate from, LocalDate onset) {
		return weeks.of(from, onset)
			.stream()
			.filter((week) -> week.kind() == ProgrammeWeek.Kind.LOADING && !week.sessions().isEmpty())
			.map(ProgrammeWeek::monday)
			.toList();
	}

	private static SortedMap<LocalDate, List<Integer>> runs(Background known, LocalDate from, LocalDate onset) {
		SortedMap<LocalDate, List<Integer>> runs = new TreeMap<>();
		for (DoneRun run : Standings.runs(known, from, onset.minusDays(1))) {
			runs.computeIfAbsent(run.day(), (day) -> new ArrayList<>()).add(run.minutes());
		}
		return runs;
	}

	private static Collection<LocalDate> unhealthy(Background known, LocalDate from, LocalDate onset) {
		TreeSet<LocalDate> days = new TreeSet<>();
		known.unwell().stream().filter((day) -> !day.isBefore(from) && !day.isAfter(onset)).forEach(days::add);
		List<Absence> away = known.absences();
		from.datesUntil(onset).filter((day) -> away.stream().anyMatch((one) -> one.covers(day))).forEach(days::add);
		return days;
	}

}
