package org.fallow.board;

import org.fallow.team.OfAthletes;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

/**
 * The latest mornings of a squad as known on a day, and how far back its days go.
 */
@Repository
@Transactional(readOnly = true)
public class LastEntries {

	private final JdbcClient jdbc;

	LastEntries(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The latest morning of each athlete, known by the end of a day.
	 * @param athletes whose
	 * @param day the day
	 * @return by athlete's id, without those who had entered nothing
	 */
	@OfAthletes
	public Map<UUID, LocalDate> knownOn(Collection<PersonId> athletes, LocalDate day) {
		Map<UUID, LocalDate> last = new TreeMap<>();
		this.jdbc.sql("""
				select a.id as athlete_id, max(m.day) as day from unnest(?::uuid[]) as a (id)
					cross join lateral unnest(fallow_entries(a.id)) as e (id) cross join lateral
					(select day from morning_entry where athlete_id = e.id and day <= ? and recorded_on <= ?
						order by day desc limit 1) m group by a.id""").params(ids(athletes), day, day).query((row) -> {
			last.put(row.getObject("athlete_id", UUID.class), row.getObject("day", LocalDate.class));
		});
		return last;
	}

	/**
	 * The first day on which any of the athletes was assessed.
	 * @param athletes whose
	 * @return the day; empty if none was
	 */
	@OfAthletes
	public Optional<LocalDate> firstDay(Collection<PersonId> athletes) {
		return this.jdbc.sql("""
				select min(f.day) as day from unnest(?::uuid[]) as a (id) cross join lateral
					(select day from assessment where athlete_id = a.id order by day limit 1) f""")
			.param(ids(athletes))
			.query((row, number) -> Optional.ofNullable(row.getObject("day", LocalDate.class)))
			.single();
	}

	private static UUID[] ids(Collection<PersonId> athletes) {
		return athletes.stream().map(PersonId::value).toArray(UUID[]::new);
	}

}
