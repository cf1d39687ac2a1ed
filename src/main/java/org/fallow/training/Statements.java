package org.fallow.training;

import java.sql.ResultSet;
import java.sql.SQLException;
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
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.OfAthlete;
import org.fallow.team.OfAthletes;
import org.fallow.team.Role;
import org.fallow.team.Squad;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What athletes, or coaches for them, say of usual volume and tested maximum heart rate.
 * Nothing is overwritten; the last of each counts.
 */
@Service
@Transactional
public class Statements {

	/** Most minutes of a week. */
	public static final int MOST_WEEK = 7 * 1440;

	/** Least heart rate that a test can have reached. */
	public static final int LEAST_BPM = 100;

	/** Greatest heart rate that a test can have reached. */
	public static final int MOST_BPM = 240;

	private final JdbcClient jdbc;

	private final Squad squad;

	private final Recording recording;

	private final AthleteAccess access;

	Statements(JdbcClient jdbc, Squad squad, Recording recording, AthleteAccess access) {
		this.jdbc = jdbc;
		this.squad = squad;
		this.recording = recording;
		this.access = access;
	}

	/**
	 * Stores what was said; the same sending once.
	 * @param id whose
	 * @param weekMinutes minutes usually run in a week; absent when not said
	 * @param longMinutes minutes of the usual long run; with the week's, or absent
	 * @param maximumBpm heart rate reached in a test or race; absent when not said
	 * @param submission who sends it, and which sending it is
	 * @return what is wrong; empty if it is stored
	 */
	@OfAthlete
	public List<Problem> say(PersonId id, @Nullable Integer weekMinutes, @Nullable Integer longMinutes,
			@Nullable Integer maximumBpm, Submission submission) {
		List<Problem> problems = problems(weekMinutes, longMinutes, maximumBpm);
		if (problems.isEmpty()) {
			Athlete athlete = this.squad.athlete(id);
			int stored = this.jdbc
				.sql("""
						insert into training_statement (athlete_id, id, week_minutes, long_minutes, maximum_bpm, recorded_at,
							recorded_on, actor_id, role, request_id) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
						on conflict do nothing""")
				.params(id.value(), Ids.next())
				.param(weekMinutes)
				.param(longMinutes)
				.param(maximumBpm)
				.params(this.recording.now().atOffset(ZoneOffset.UTC), this.recording.today(athlete),
						submission.actor().value(), submission.role().name(), submission.requestId())
				.update();
			if (stored == 1) {
				this.access.changed(athlete, TraceSubject.TRAINING);
			}
		}
		return problems;
	}

	private static List<Problem> problems(@Nullable Integer week, @Nullable Integer longRun,
			@Nullable Integer maximum) {
		List<Problem> problems = new ArrayList<>();
		if (week == null && longRun == null && maximum == null) {
			problems.add(Problem.of("weekMinutes", "statement.nothing"));
		}
		if ((week == null) != (longRun == null)) {
			problems.add(Problem.of((week == null) ? "weekMinutes" : "longMinutes", "statement.both"));
		}
		if (week != null && (week < 0 || week > MOST_WEEK)) {
			problems.add(Problem.of("weekMinutes", "statement.week.range", 0, MOST_WEEK));
		}
		if (week != null && longRun != null && (longRun < 0 || longRun > week)) {
			problems.add(Problem.of("longMinutes", "statement.long.range", 0, week));
		}
		if (maximum != null && (maximum < LEAST_BPM || maximum > MOST_BPM)) {
			problems.add(Problem.of("maximumBpm", "statement.maximum.range", LEAST_BPM, MOST_BPM));
		}
		return problems;
	}

	/**
	 * What holds of an athlete.
	 * @param id whose
	 * @return the latest of each; all absent where nothing was said
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public Statement of(PersonId id) {
		return of(List.of(id)).getOrDefault(id, Statement.NONE);
	}

	/**
	 * What holds of several athletes.
	 * @param ids whose
	 * @return by athlete, the latest of each; who never said anything is absent
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, Statement> of(Collection<PersonId> ids) {
		Map<PersonId, Statement> found = new HashMap<>();
		this.jdbc.sql("""
				select s.id, v.week_minutes, v.long_minutes, v.recorded_on, v.role, m.maximum_bpm
				from (select a.id, fallow_entries(a.id) as entries from unnest(?::uuid[]) as a (id)) s
				left join lateral (select * from training_statement where athlete_id = any (s.entries)
					and week_minutes is not null order by recorded_at desc, id desc limit 1) v on true
				left join lateral (select * from training_statement where athlete_id = any (s.entries)
					and maximum_bpm is not null order by recorded_at desc, id desc limit 1) m on true
				where v.id is not null or m.id is not null""")
			.param(ids.stream().map(PersonId::value).toArray(UUID[]::new))
			.query((row) -> {
				found.put(new PersonId(row.getObject("id", UUID.class)), read(row, 0));
			});
		return found;
	}

	private static Statement read(ResultSet row, int number) throws SQLException {
		String role = row.getString("role");
		return new Statement(row.getObject("week_minutes", Integer.class), row.getObject("long_minutes", Integer.class),
				row.getObject("recorded_on", LocalDate.class), (role == null) ? null : Role.valueOf(role),
				row.getObject("maximum_bpm", Integer.class));
	}

}
