package org.fallow.training;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Recording;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.AthleteStatus;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.OfAthlete;
import org.fallow.team.OfAthletes;
import org.fallow.team.Squad;
import org.fallow.training.core.DoneRun;
import org.fallow.training.core.Modification;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.Position;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.training.core.Rejoin;
import org.fallow.training.core.UsualVolume;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What athletes do of their group's programme. Nothing of it is stored: it follows from
 * what is, so it is never behind. Of somebody in several groups the home group counts; of
 * somebody who left the team none.
 */
@Service
@Transactional
public class Plans {

	/** Most days ahead that are planned. */
	public static final int DAYS_AHEAD = 27;

	private static final int LOG_DAYS = 28;

	private static final int RACE_WEEKS_AHEAD = 26;

	private final AthleteAccess access;

	private final Squad squad;

	private final Recording recording;

	private final Assessments assessments;

	private final Programmes programmes;

	private final Standings standings;

	private final UsualVolumes usualVolumes;

	Plans(AthleteAccess access, Squad squad, Recording recording, Assessments assessments, Programmes programmes,
			Standings standings, UsualVolumes usualVolumes) {
		this.access = access;
		this.squad = squad;
		this.recording = recording;
		this.assessments = assessments;
		this.programmes = programmes;
		this.standings = standings;
		this.usualVolumes = usualVolumes;
	}

	/**
	 * The coming sessions of an athlete, from the athlete's today on.
	 * @param id whose
	 * @param to last day, inclusive; at most {@link #DAYS_AHEAD} days ahead are planned
	 * @return the plan; without sessions where the programme has none
	 */
	@OfAthlete
	public Plan of(PersonId id, LocalDate to) {
		return Objects.requireNonNull(of(List.of(id), to).get(id));
	}

	/**
	 * The coming sessions of several athletes, each from the own today on.
	 * @param ids whose
	 * @param to last day, inclusive; at most {@link #DAYS_AHEAD} days ahead are planned
	 * @return by athlete
	 */
	@OfAthletes
	public Map<PersonId, Plan> of(Collection<PersonId> ids, LocalDate to) {
		this.assessments.bringUpTo(ids, to);
		Map<PersonId, AthleteStatus> status = this.assessments.status(ids);
		Map<UUID, List<PlannedSession>> known = new HashMap<>();
		Map<PersonId, Plan> plans = new LinkedHashMap<>();
		for (PersonId id : ids) {
			Athlete athlete = this.squad.athlete(id);
			LocalDate today = this.recording.today(athlete);
			UUID group = athlete.groupId();
			List<PlannedSession> sessions = (group == null || !this.access.maySeeGroup(group)) ? List.of()
					: known.computeIfAbsent(group, (one) -> sessions(one, today, to));
			AthleteStatus own = status.get(id);
			Position position = this.standings.position(athlete, today, (own == null) ? null : own.latest());
			plans.put(id,
					plan(athlete, position, (own == null) ? null : own.latest(),
							sessions.stream()
								.filter((session) -> !session.day().isBefore(today)
										&& !session.day().isAfter(today.plusDays(DAYS_AHEAD)))
								.toList()));
		}
		return plans;
	}

	/** With a day to spare, for athletes of one group whose zones differ. */
	private List<PlannedSession> sessions(UUID group, LocalDate today, LocalDate to) {
		return this.programmes.weeks(group, today.minusDays(2), to)
			.values()
			.stream()
			.map(ProgrammeWeek::sessions)
			.flatMap(List::stream)
			.filter((session) -> !session.day().isAfter(to))
			.toList();
	}

	private Plan plan(Athlete athlete, Position position, @Nullable AssessedDay latest, List<PlannedSession> sessions) {
		LocalDate today = position.today();
		boolean back = position.back() != null;
		UsualVolume usual = back ? this.usualVolumes.of(athlete, position) : UsualVolume.unknown();
		List<DoneRun> runs = this.standings.runs(athlete, back ? today.minusDays(LOG_DAYS) : today, today);
		List<DoneRun> done = back ? runs : List.of();
		int ranToday = runs.stream().filter((run) -> run.day().equals(today)).mapToInt(DoneRun::minutes).sum();
		return new Plan(athlete.id(), position, usual, Modification.of(sessions, position, usual, done),
				this.standings.ceilings(athlete, today), rejoin(athlete, position, latest), ranToday);
	}

	private @Nullable Rejoin rejoin(Athlete athlete, Position position, @Nullable AssessedDay latest) {
		UUID group = athlete.groupId();
		LocalDate onset = position.onset();
		if (position.back() == null || latest == null || onset == null) {
			return null;
		}
		List<ProgrammeWeek> weeks = (group == null || !this.access.maySeeGroup(group)) ? List.of() : List
			.copyOf(this.programmes.weeks(group, onset, position.today().plusWeeks(RACE_WEEKS_AHEAD)).values());
		return Rejoin.of(position, latest.nextGateEarliest(), weeks).orElse(null);
	}

}
