package org.fallow.entry;

import java.util.Optional;

import org.fallow.access.PersonId;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lets one transaction at a time add facts about an athlete: it locks the athlete's
 * status row until the transaction ends. Whoever locks several athletes does so in the
 * order of their ids.
 */
@Component
@Transactional(propagation = Propagation.MANDATORY)
public class AthleteLock {

	private final JdbcClient jdbc;

	AthleteLock(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Waits for the athlete's status row and locks it, making it first where there is
	 * none.
	 * @param athlete whose
	 * @return the row's version, counted up by every assessment
	 */
	public long lock(PersonId athlete) {
		return locked(athlete).orElseGet(() -> {
			this.jdbc.sql("insert into athlete_status (athlete_id) values (?) on conflict do nothing")
				.param(athlete.value())
				.update();
			return locked(athlete).orElseThrow();
		});
	}

	private Optional<Long> locked(PersonId athlete) {
		return this.jdbc.sql("select version from athlete_status where athlete_id = ? for update")
			.param(athlete.value())
			.query(Long.class)
			.optional();
	}

}
