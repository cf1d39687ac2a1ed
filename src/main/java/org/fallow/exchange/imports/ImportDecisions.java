package org.fallow.exchange.imports;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.PersonId;

import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Repository;

/**
 * What was decided of names in files. Every call needs a transaction.
 */
@Repository
class ImportDecisions {

	private final JdbcTemplate jdbc;

	ImportDecisions(JdbcTemplate jdbc) {
		this.jdbc = jdbc;
	}

	/** Adds the decisions of a job, by the names as the file has them. */
	void add(UUID job, Map<String, Decision> decisions) {
		List<Map.Entry<String, Decision>> all = new ArrayList<>(decisions.entrySet());
		this.jdbc.batchUpdate("insert into import_person (job_id, person, decision, same_as) values (?, ?, ?, ?)", all,
				Math.max(1, all.size()), (statement, entry) -> {
					PersonId same = entry.getValue().sameAs();
					statement.setObject(1, job);
					statement.setString(2, entry.getKey());
					statement.setString(3, entry.getValue().kind().name());
					statement.setObject(4, (same == null) ? null : same.value());
				});
	}

	Map<String, Decision> of(UUID job) {
		Map<String, Decision> decisions = new HashMap<>();
		this.jdbc.query("select person, decision, same_as from import_person where job_id = ?", (row) -> {
			UUID same = row.getObject(3, UUID.class);
			decisions.put(row.getString(1),
					new Decision(Decision.Kind.valueOf(row.getString(2)), (same == null) ? null : new PersonId(same)));
		}, job);
		return decisions;
	}

	void forget(UUID job) {
		this.jdbc.update("delete from import_person where job_id = ?", job);
	}

}
