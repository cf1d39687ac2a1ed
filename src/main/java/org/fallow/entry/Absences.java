package org.fallow.entry;

import org.fallow.team.OfAthlete;
import org.fallow.team.OfAthletes;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.wording.Problem;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The absences of athletes for other reasons than illness; a correction is a later one of
 * the same key.
 */
@Service
@Transactional
public class Absences {

	/** How many days ahead an absence may begin or end. */
	public static final int AHEAD = 730;

	static final String TABLE = "absence";

	/**
	 * Of all entries of each person; a correction of another entry's is one of the own.
	 */
	private static final String LATEST = """
			select distinct on (whose, named) * from (select w.id as whose, e.place,
					case when e.place = 1 then a.key else a.athlete_id || ':' || a.key end as named, a.*
				from unnest(?::uuid[]) as w (id)
					cross join lateral unnest(fallow_entries(w.id)) with ordinality as e (id, place)
					join absence a on a.athlete_id = e.id) every
			order by whose, named, place, revision desc""";

	private final SmallFacts facts;

	private final JdbcClient client;

	Absences(SmallFacts facts, JdbcClient client) {
		this.facts = facts;
		this.client = client;
	}

	/**
	 * Stores an absence, or a correction of one.
	 * @param id whose
	 * @param absence what was entered
	 * @param submission who sends it, and which sending it is
	 * @return stored with its key, or refused
	 */
	@OfAthlete
	public Saved save(PersonId id, NewAbsence absence, Submission submission) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		List<Problem> problems = problems(athlete, absence, submission);
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		Recorded recorded = this.facts.recorded(athlete, absence.day(), absence.recordedOn(), submission,
				HistoryTime.MORNING);
		Absence fact = new Absence("", absence.day(), absence.until(), recorded, absence.kind(), absence.note());
		return this.facts.add(TABLE, athlete, absence.key(), fact, submission, "until_day, kind, note", fact.until(),
				fact.kind(), fact.note());
	}

	private List<Problem> problems(Athlete athlete, NewAbsence absence, Submission submission) {
		List<Problem> problems = new ArrayList<>();
		LocalDate latest = this.facts.today(athlete).plusDays(AHEAD);
		LocalDate until = absence.until();
		Days.check(problems, "day", absence.day(), latest, Source.IMPORT);
		if (until != null && until.isBefore(absence.day())) {
			problems.add(Problem.of("until", "entry.until.order"));
		}
		if (until != null && until.isAfter(latest)) {
			problems.add(Problem.of("until", "entry.day.future", until, latest));
		}
		if (absence.key() != null && !this.facts.has(TABLE, athlete.id(), absence.key())) {
			problems.add(Problem.of("key", "entry.key.unknown"));
		}
		Words.check(problems, "note", absence.note());
		return problems;
	}

	/**
	 * The absences of an athlete as they stand.
	 * @param athlete whose
	 * @return the latest of each key, by first day
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<Absence> of(PersonId athlete) {
		return this.client.sql("""
				select * from (%LATEST%) latest order by day, named""".replace("%LATEST%", LATEST))
			.param(new UUID[] { athlete.value() })
			.query(Absences::read)
			.list();
	}

	/**
	 * The absences of several athletes as they stand.
	 * @param athletes whose
	 * @return by athlete's id, without those who noted none
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<UUID, List<Absence>> of(Collection<PersonId> athletes) {
		Map<UUID, List<Absence>> found = new TreeMap<>();
		this.client.sql(LATEST).param(athletes.stream().map(PersonId::value).toArray(UUID[]::new)).query((row) -> {
			found.computeIfAbsent(row.getObject("whose", UUID.class), (id) -> new ArrayList<>()).add(read(row, 0));
		});
		return found;
	}

	private static Absence read(ResultSet row, int number) throws SQLException {
		return new Absence(row.getString("named"), Columns.day(row, "day"), Columns.dayOrNull(row, "until_day"),
				Columns.recorded(row), AbsenceKind.valueOf(row.getString("kind")), row.getString("note"));
	}

}
