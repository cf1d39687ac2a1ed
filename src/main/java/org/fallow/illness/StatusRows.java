package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Columns;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The one row each athlete has that a board reads, and that a writer locks.
 */
@Component
class StatusRows {

	static final String UPDATE = """
			update athlete_status set version = version + 1, latest_day = ?, last_entry =
				(select max(last.day) from unnest(fallow_entries(?)) as entry (id) cross join lateral
					(select day from morning_entry where athlete_id = entry.id order by day desc limit 1) last)
			where athlete_id = ?""";

	private final JdbcClient client;

	StatusRows(JdbcClient client) {
		this.client = client;
	}

	/** Points the status to the latest day decided and counts its version up. */
	void store(PersonId athlete, LocalDate day) {
		this.client.sql(UPDATE).params(day, athlete.value(), athlete.value()).update();
	}

	/** Points the status to another day, unless it does so already. */
	void pointTo(PersonId athlete, LocalDate day) {
		if (!latest(athlete).equals(Optional.of(day))) {
			store(athlete, day);
		}
	}

	/** The day the status points to; empty before the first fact. */
	Optional<LocalDate> latest(PersonId athlete) {
		return this.client.sql("select latest_day from athlete_status where athlete_id = ? and latest_day is not null")
			.param(athlete.value())
			.query(LocalDate.class)
			.optional();
	}

	/**
	 * Whose status does not point to a day, but to an earlier or a later one; in the
	 * order of the ids.
	 */
	List<PersonId> elsewhere(Collection<PersonId> athletes, LocalDate day) {
		return this.client.sql("""
				select athlete_id from athlete_status
				where athlete_id = any (:ids) and latest_day <> :day order by athlete_id""")
			.param("ids", AssessmentRows.ids(athletes))
			.param("day", day)
			.query((row, n) -> new PersonId(row.getObject("athlete_id", UUID.class)))
			.list();
	}

	Map<PersonId, AthleteStatus> of(Collection<PersonId> athletes) {
		Map<PersonId, AthleteStatus> found = new LinkedHashMap<>();
		this.client.sql(
				"select s.version, s.last_entry, s.athlete_id as status_of, a.* from athlete_status s left join (select "
						+ AssessmentRows.SHOWN + """
								 from assessment) a on a.athlete_id = s.athlete_id and a.day = s.latest_day
								where s.athlete_id = any (:ids) order by s.athlete_id""")
			.param("ids", AssessmentRows.ids(athletes))
			.query(StatusRows::read)
			.list()
			.forEach((status) -> found.put(status.athlete(), status));
		return found;
	}

	private static AthleteStatus read(ResultSet row, int number) throws SQLException {
		PersonId athlete = new PersonId(row.getObject("status_of", UUID.class));
		AssessedDay latest = (row.getObject("day") == null) ? null : AssessmentRows.read(row, number);
		return new AthleteStatus(athlete, row.getLong("version"), Columns.dayOrNull(row, "last_entry"), latest);
	}

}
