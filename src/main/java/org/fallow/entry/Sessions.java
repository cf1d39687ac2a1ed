package org.fallow.entry;

import org.fallow.team.OfAthlete;
import org.fallow.team.OfAthletes;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.rules.Intensity;
import org.fallow.team.Athlete;
import org.fallow.wording.Problem;

import org.springframework.jdbc.core.ResultSetExtractor;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The session logs of athletes. Logs are only ever added: a correction is a later log of
 * the same key.
 */
@Service
@Transactional
public class Sessions {

	static final String TABLE = "session_log";

	/** The key of a row: of another entry of the person it begins with that one's id. */
	private static final String NAMED = "case when e.place = 1 then s.key else s.athlete_id || ':' || s.key end";

	private final SmallFacts facts;

	private final JdbcClient client;

	Sessions(SmallFacts facts, JdbcClient client) {
		this.facts = facts;
		this.client = client;
	}

	/**
	 * Stores a session, or a correction of one.
	 * @param id whose
	 * @param session what was logged
	 * @param submission who sends it, and which sending it is
	 * @return stored with its key, or refused
	 */
	@OfAthlete
	public Saved save(PersonId id, NewSession session, Submission submission) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		List<Problem> problems = problems(athlete, session, submission);
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		Recorded recorded = this.facts.recorded(athlete, session.day(), session.recordedOn(), submission,
				HistoryTime.SESSION);
		SessionLog log = new SessionLog("", session.day(), recorded, session.activity(), session.minutes(),
				session.rpe(), session.intensity(), session.after(), session.removed(), session.note());
		return this.facts.add(TABLE, athlete, session.key(), log, submission,
				"activity, minutes, rpe, intensity, after_session, removed, note", log.activity(), log.minutes(),
				log.rpe(), log.intensity(), Columns.array("text", log.after()), log.removed(), log.note());
	}

	private List<Problem> problems(Athlete athlete, NewSession session, Submission submission) {
		List<Problem> problems = new ArrayList<>();
		Days.check(problems, "day", session.day(), this.facts.today(athlete), submission.source());
		if (session.minutes() != null && (session.minutes() < 0 || session.minutes() > 1440)) {
			problems.add(Problem.of("minutes", "session.minutes.range", 0, 1440));
		}
		if (session.rpe() != null && !(session.rpe() >= 0 && session.rpe() <= 10)) {
			problems.add(Problem.of("rpe", "session.rpe.range", 0, 10));
		}
		if (session.key() != null && !this.facts.has(TABLE, athlete.id(), session.key())) {
			problems.add(Problem.of("key", "entry.key.unknown"));
		}
		Words.check(problems, "note", session.note());
		return problems;
	}

	/**
	 * The sessions of some days as they stand.
	 * @param athlete whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @return the latest log of each key, removed ones left out, by day
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<SessionLog> of(PersonId athlete, LocalDate from, LocalDate to) {
		return of(List.of(athlete), from, to).getOrDefault(athlete, List.of());
	}

	/**
	 * The sessions of some days as they were known by the end of a day.
	 * @param athlete whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @param on the day
	 * @return the latest log of each key recorded by then, removed ones left out, newest
	 * first
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<SessionLog> knownOn(PersonId athlete, LocalDate from, LocalDate to, LocalDate on) {
		return this.client
			.sql("""
					select e.place, %NAMED% as named, s.* from unnest(fallow_entries(:athlete)) with ordinality as e (id, place)
						join session_log s on s.athlete_id = e.id
					where s.day between :from and :to and not s.removed and s.recorded_on <= :on
						and not exists (select 1 from session_log l where l.athlete_id = s.athlete_id and l.key = s.key
							and l.revision > s.revision and l.recorded_on <= :on)
						and (e.place = 1 or not exists (select 1 from session_log l where l.athlete_id = :athlete
							and l.key = s.athlete_id || ':' || s.key and l.recorded_on <= :on))
					order by s.day desc, s.recorded_at desc, s.key"""
				.replace("%NAMED%", NAMED))
			.param("athlete", athlete.value())
			.param("from", from)
			.param("to", to)
			.param("on", on)
			.query((ResultSetExtractor<List<SessionLog>>) (rows) -> {
				Logs logs = new Logs();
				while (rows.next()) {
					logs.add(rows);
				}
				return logs.once();
			});
	}

	/**
	 * The sessions of some days of several athletes as they stand.
	 * @param athletes whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @return by athlete, without those who have none: the latest log of each key,
	 * removed ones left out, by day
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, List<SessionLog>> of(Collection<PersonId> athletes, LocalDate from, LocalDate to) {
		Map<PersonId, Logs> found = new HashMap<>();
		this.client.sql("""
				select a.id as whose, e.place, %NAMED% as named, s.* from unnest(?::uuid[]) as a (id)
					cross join lateral unnest(fallow_entries(a.id)) with ordinality as e (id, place)
					join session_log s on s.athlete_id = e.id
				where s.day between ? and ? and not s.removed
					and not exists (select 1 from session_log l where l.athlete_id = s.athlete_id and l.key = s.key
						and l.revision > s.revision)
					and (e.place = 1 or not exists (select 1 from session_log l where l.athlete_id = a.id
						and l.key = s.athlete_id || ':' || s.key))
				order by s.day, s.recorded_at, s.key""".replace("%NAMED%", NAMED))
			.params(athletes.stream().map(PersonId::value).toArray(UUID[]::new), from, to)
			.query((row) -> {
				found.computeIfAbsent(new PersonId(row.getObject("whose", UUID.class)), (id) -> new Logs()).add(row);
			});
		Map<PersonId, List<SessionLog>> once = new HashMap<>();
		found.forEach((id, logs) -> once.put(id, logs.once()));
		return once;
	}

	/** Sessions of an athlete's entries: one that two of them have counts once. */
	private static final class Logs {

		private final List<Fact> logs = new ArrayList<>();

		private final List<Integer> entries = new ArrayList<>();

		void add(ResultSet row) throws SQLException {
			this.logs.add(read(row));
			this.entries.add(row.getInt("place") - 1);
		}

		List<SessionLog> once() {
			return SeveralEntries.others(this.logs, this.entries, null).stream().map(SessionLog.class::cast).toList();
		}

	}

	private static SessionLog read(ResultSet row) throws SQLException {
		return new SessionLog(row.getString("named"), Columns.day(row, "day"), Columns.recorded(row),
				Activity.valueOf(row.getString("activity")), Columns.integer(row, "minutes"),
				Columns.number(row, "rpe"), Columns.nullable(row, "intensity", Intensity.class),
				Columns.list(row, "after_session", AfterSession.class), row.getBoolean("removed"),
				row.getString("note"));
	}

}
