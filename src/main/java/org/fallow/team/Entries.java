package org.fallow.team;

import org.fallow.access.PersonId;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * People as entries: which were put aside when two entries of one person were made one,
 * and which somebody signs in as.
 */
@Component
@Transactional(readOnly = true)
public class Entries {

	private final JdbcClient jdbc;

	Entries(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Whether a standing merge put an entry aside: nobody signs in as it.
	 * @param person the entry
	 * @return true while the merge stands
	 */
	public boolean isSetAside(PersonId person) {
		return this.jdbc.sql("select fallow_set_aside(?)").param(person.value()).query(Boolean.class).single();
	}

	/**
	 * Whether somebody signs in as an athlete.
	 * @param athlete whom the present person covers more than as a deputy
	 * @return true if there is an account; false for anybody else
	 */
	public boolean hasAccount(PersonId athlete) {
		return this.jdbc.sql("select fallow_has_account(?)").param(athlete.value()).query(Boolean.class).single();
	}

}
