package org.fallow.training;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.PersonId;
import org.fallow.entry.Absence;
import org.fallow.entry.Absences;
import org.fallow.entry.Activity;
import org.fallow.entry.Recording;
import org.fallow.entry.Sessions;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.rules.Clearance;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.OfAthlete;
import org.fallow.team.Squad;
import org.fallow.training.core.LoggedRun;
import org.fallow.training.core.LoggedWeek;
import org.fallow.training.core.ProgrammeWeek;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The log of an athlete beside the group's programme. */
@Service
@Transactional(readOnly = true)
public class TrainingLog {

	private final AthleteAccess access;

	private final Squad squad;

	private final Recording recording;

	private final Programmes programmes;

	private final Sessions sessions;

	private final Assessments assessments;

	private final Absences absences;

	TrainingLog(AthleteAccess access, Squad squad, Recording recording, Programmes programmes, Sessions sessions,
			Assessments assessments, Absences absences) {
		this.access = access;
		this.squad = squad;
		this.recording = recording;
		this.programmes = programmes;
		this.sessions = sessions;
		this.assessments = assessments;
		this.absences = absences;
	}

	/**
	 * The present week and those before it.
	 * @param id whose
	 * @param weeks how many, the present one among them
	 * @return newest first; a week without a programme has no sessions, but its runs
	 */
	@OfAthlete
	public List<LoggedWeek> of(PersonId id, int weeks) {
		Athlete athlete = this.squad.athlete(id);
		LocalDate today = this.recording.today(athlete);
		LocalDate present = Programmes.mondayOf(today);
		LocalDate from = present.minusWeeks(weeks - 1L);
		UUID group = athlete.groupId();
		Map<LocalDate, ProgrammeWeek> programme = (group == null || !this.access.maySeeGroup(group)) ? Map.of()
				: this.programmes.weeks(group, from, today);
		List<LoggedRun> runs = this.sessions.of(id, from, today)
			.stream()
			.filter((log) -> log.activity() == Activity.RUN)
			.map((log) -> new LoggedRun(log.day(), log.minutes(), log.rpe(), log.intensity()))
			.toList();
		Set<LocalDate> excused = excused(id, from, today);
		return Stream.iterate(present, (monday) -> monday.minusWeeks(1))
			.limit(weeks)
			.map((monday) -> LoggedWeek.of(
					programme.getOrDefault(monday, new ProgrammeWeek(monday, ProgrammeWeek.Kind.LOADING, List.of())),
					runs, excused, today))
			.toList();
	}

	private Set<LocalDate> excused(PersonId id, LocalDate from, LocalDate today) {
		Set<LocalDate> days = new TreeSet<>();
		this.assessments.of(id, from, today)
			.stream()
			.filter((day) -> day.inEpisode() || day.holding() || day.clearance().compareTo(Clearance.REST) <= 0)
			.map(AssessedDay::day)
			.forEach(days::add);
		List<Absence> away = this.absences.of(id);
		from.datesUntil(today.plusDays(1))
			.filter((day) -> away.stream().anyMatch((one) -> one.covers(day)))
			.forEach(days::add);
		return days;
	}

}
