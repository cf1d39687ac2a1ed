package org.fallow.training;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Absence;
import org.fallow.entry.Absences;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.team.Athlete;
import org.fallow.team.Role;
import org.fallow.training.core.DoneRun;
import org.fallow.training.core.Position;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.training.core.UsualVolume;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/** What an athlete in a return usually runs, from what is stored. */
@Component
class UsualVolumes {

	/** Loading weeks, and healthy days, are looked for so far back. */
	private static final int DAYS_BACK = 182;

	private final Programmes programmes;

	private final Standings standings;

	private final Assessments assessments;

	private final Absences absences;

	private final Statements statements;

	UsualVolumes(Programmes programmes, Standings standings, Assessments assessments, Absences absences,
			Statements statements) {
		this.programmes = programmes;
		this.standings = standings;
		this.assessments = assessments;
		this.absences = absences;
		this.statements = statements;
	}

	/**
	 * Before the present onset. After a long time away only what the coach stated since
	 * counts; read narrowly, nothing is known until then.
	 */
	UsualVolume of(Athlete athlete, Position position) {
		Position.Return back = position.back();
		LocalDate onset = position.onset();
		if (back == null || onset == null) {
			return UsualVolume.unknown();
		}
		Statement said = this.statements.of(athlete.id());
		LocalDate longAway = onset.plusDays(back.longAwayDays());
		if (position.today().isAfter(longAway)) {
			LocalDate on = said.volumeOn();
			boolean anew = on != null && on.isAfter(longAway) && said.volumeBy() == Role.COACH;
			return Objects.requireNonNullElse(anew ? stated(said) : null, UsualVolume.unknown());
		}
		LocalDate from = onset.minusDays(DAYS_BACK);
		return UsualVolume.of(onset, loading(athlete.groupId(), from, onset), runs(athlete, from, onset),
				unhealthy(athlete.id(), from, onset), stated(said));
	}

	private static @Nullable UsualVolume stated(Statement said) {
		Integer week = said.weekMinutes();
		Integer longRun = said.longMinutes();
		return (week == null || longRun == null) ? null : UsualVolume.stated(week, longRun);
	}

	private List<LocalDate> loading(@Nullable UUID group, LocalDate from, LocalDate onset) {
		return (group == null) ? List.of()
				: this.programmes.weeks(group, from, onset)
					.values()
					.stream()
					.filter((week) -> week.kind() == ProgrammeWeek.Kind.LOADING && !week.sessions().isEmpty())
					.map(ProgrammeWeek::monday)
					.toList();
	}

	private SortedMap<LocalDate, List<Integer>> runs(Athlete athlete, LocalDate from, LocalDate onset) {
		SortedMap<LocalDate, List<Integer>> runs = new TreeMap<>();
		for (DoneRun run : this.standings.runs(athlete, from, onset.minusDays(1))) {
			runs.computeIfAbsent(run.day(), (day) -> new ArrayList<>()).add(run.minutes());
		}
		return runs;
	}

	private Collection<LocalDate> unhealthy(PersonId athlete, LocalDate from, LocalDate onset) {
		TreeSet<LocalDate> days = new TreeSet<>();
		this.assessments.of(athlete, from, onset)
			.stream()
			.filter((day) -> day.inEpisode() || day.holding())
			.map(AssessedDay::day)
			.forEach(days::add);
		List<Absence> away = this.absences.of(athlete);
		from.datesUntil(onset).filter((day) -> away.stream().anyMatch((one) -> one.covers(day))).forEach(days::add);
		return days;
	}

}
