package org.fallow.illness;

import java.sql.Date;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.SortedMap;
import java.util.UUID;

import org.fallow.access.PersonId;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Who is behind: decided some day, but not yet today in the own zone. The database tells
 * it to the purpose {@code OPERATION} only.
 */
@Component
@Transactional(readOnly = true)
class BehindRows {

	private final JdbcClient client;

	BehindRows(JdbcClient client) {
		this.client = client;
	}

	/** The zones in which anybody with a fact lives, by name. */
	List<String> zones() {
		return this.client.sql("select zone from fallow_zones() zone").query(String.class).list();
	}

	/**
	 * Some of those who are behind, the longest behind of a zone first.
	 * @param today the civil day by zone
	 * @param without whom to leave out
	 * @param most how many at most
	 */
	List<Behind> behind(SortedMap<String, LocalDate> today, Collection<PersonId> without, int most) {
		return this.client.sql("select athlete_id, today from fallow_behind(?, ?, ?, ?)")
			.param(today.keySet().toArray(String[]::new))
			.param(today.values().stream().map(Date::valueOf).toArray(Date[]::new))
			.param(without.stream().map(PersonId::value).toArray(UUID[]::new))
			.param(most)
			.query((row, number) -> new Behind(new PersonId(row.getObject("athlete_id", UUID.class)),
					row.getObject("today", LocalDate.class)))
			.list();
	}

	/**
	 * Somebody with days to be decided.
	 *
	 * @param athlete who
	 * @param today the last of those days
	 */
	record Behind(PersonId athlete, LocalDate today) {

	}

}
