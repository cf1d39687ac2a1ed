package org.fallow.training;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.entry.Recording;
import org.fallow.entry.Submission;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.AthleteStatus;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.ByFullCoach;
import org.fallow.team.OfAthlete;
import org.fallow.team.OfAthletes;
import org.fallow.team.Squad;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What coaches say of races within fourteen days of an illness. The word lifts that rule
 * alone: stage, clearance and hold stay as they are, and a new illness ends it. Nothing
 * is overwritten; the last word for a day counts.
 */
@Service
@Transactional
public class RaceWords {

	private static final int MOST_LETTERS = 2000;

	private static final int DAYS_AHEAD = 28;

	private final JdbcClient jdbc;

	private final Squad squad;

	private final Recording recording;

	private final AthleteAccess access;

	private final Assessments assessments;

	private final Programmes programmes;

	RaceWords(JdbcClient jdbc, Squad squad, Recording recording, AthleteAccess access, Assessments assessments,
			Programmes programmes) {
		this.jdbc = jdbc;
		this.squad = squad;
		this.recording = recording;
		this.access = access;
		this.assessments = assessments;
		this.programmes = programmes;
	}

	/**
	 * Stores a coach's word; the same sending once.
	 * @param id who races
	 * @param raceOn day of a race in the group's programme, from today on
	 * @param agreed whether it may be run; false takes an earlier word back and is always
	 * heard
	 * @param reason why
	 * @param submission who sends it, and which sending it is
	 * @return what is wrong; empty if it is stored
	 */
	@ByFullCoach
	public List<Problem> say(PersonId id, @Nullable LocalDate raceOn, boolean agreed, String reason,
			Submission submission) {
		Athlete athlete = this.squad.athlete(id);
		List<Problem> problems = problems(athlete, raceOn, agreed, reason);
		if (raceOn == null || !problems.isEmpty()) {
			return problems;
		}
		int stored = this.jdbc
			.sql("""
					insert into race_word (athlete_id, id, race_on, agreed, reason, recorded_at, recorded_on, actor_id, request_id)
					values (?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing""")
			.params(id.value(), Ids.next(), raceOn, agreed, reason, this.recording.now().atOffset(ZoneOffset.UTC),
					this.recording.today(athlete), submission.actor().value(), submission.requestId())
			.update();
		if (stored == 1) {
			this.access.changed(athlete, TraceSubject.TRAINING);
		}
		return List.of();
	}

	private List<Problem> problems(Athlete athlete, @Nullable LocalDate raceOn, boolean agreed, String reason) {
		List<Problem> problems = new ArrayList<>();
		if (raceOn == null || !races(athlete).contains(raceOn)) {
			problems.add(Problem.of("raceOn", "race-word.no-race"));
		}
		if (reason.isBlank() || reason.length() > MOST_LETTERS) {
			problems.add(Problem.of("raceReason", "race-word.reason", MOST_LETTERS));
		}
		if (agreed && isIllOrHeld(athlete)) {
			problems.add(Problem.of("raceOn", "race-word.ill"));
		}
		return problems;
	}

	private boolean isIllOrHeld(Athlete athlete) {
		LocalDate today = this.recording.today(athlete);
		this.assessments.bringUpTo(List.of(athlete.id()), today);
		AthleteStatus status = this.assessments.status(List.of(athlete.id())).get(athlete.id());
		AssessedDay latest = (status == null) ? null : status.latest();
		return latest != null && (latest.holding() || Integer.valueOf(0).equals(latest.stage()));
	}

	/**
	 * Races of an athlete's group that a word can be said for.
	 * @param id whose
	 * @return their days, from today on, within four weeks
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<LocalDate> races(PersonId id) {
		return races(this.squad.athlete(id));
	}

	private List<LocalDate> races(Athlete athlete) {
		UUID group = athlete.groupId();
		LocalDate today = this.recording.today(athlete);
		return (group == null || !this.access.maySeeGroup(group)) ? List.of()
				: this.programmes.weeks(group, today, today.plusDays(DAYS_AHEAD))
					.values()
					.stream()
					.map(ProgrammeWeek::sessions)
					.flatMap(List::stream)
					.filter((session) -> session.kind() == PlannedSession.Kind.RACE)
					.map(PlannedSession::day)
					.filter((day) -> !day.isBefore(today))
					.distinct()
					.sorted()
					.toList();
	}

	/**
	 * The words that stand for races from some day on.
	 * @param athlete who races
	 * @param from first day
	 * @return the last word for each day, by day
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<RaceWord> of(PersonId athlete, LocalDate from) {
		return of(List.of(athlete), from).getOrDefault(athlete, List.of());
	}

	/**
	 * The words that stand for races of several athletes from some day on.
	 * @param athletes who race
	 * @param from first day
	 * @return by athlete, without those who have none: the last word for each day, by day
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, List<RaceWord>> of(Collection<PersonId> athletes, LocalDate from) {
		Map<PersonId, List<RaceWord>> found = new HashMap<>();
		this.jdbc.sql("""
				select distinct on (w.athlete_id, w.race_on) w.athlete_id, w.race_on, w.agreed, w.reason, w.recorded_on,
					coalesce(p.name, '') as coach
				from race_word w left join person p on p.id = w.actor_id
				where w.athlete_id = any (?) and w.race_on >= ?
				order by w.athlete_id, w.race_on, w.recorded_at desc, w.id desc""")
			.params(athletes.stream().map(PersonId::value).toArray(UUID[]::new), from)
			.query((row) -> {
				found.computeIfAbsent(new PersonId(row.getObject("athlete_id", UUID.class)), (id) -> new ArrayList<>())
					.add(new RaceWord(row.getObject("race_on", LocalDate.class), row.getBoolean("agreed"),
							row.getString("reason"), row.getString("coach"),
							row.getObject("recorded_on", LocalDate.class)));
			});
		return found;
	}

}
