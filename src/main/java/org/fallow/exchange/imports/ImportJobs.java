package org.fallow.exchange.imports;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * The rows of import jobs. Every call needs a transaction.
 */
@Repository
class ImportJobs {

	private final JdbcClient jdbc;

	ImportJobs(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	void add(UUID id, UUID teamId, PersonId actor, String fileName, List<String> headers, Instant now) {
		this.jdbc.sql("""
				insert into import_job (id, team_id, actor_id, file_name, state, headers, mapping, started_at)
				values (?, ?, ?, ?, 'MAPPING', ?, '', ?)""")
			.params(id, teamId, actor.value(), fileName, headers.toArray(String[]::new),
					OffsetDateTime.ofInstant(now, ZoneOffset.UTC))
			.update();
	}

	void total(UUID id, long rows) {
		this.jdbc.sql("update import_job set rows_total = ? where id = ?").params(rows, id).update();
	}

	/** Keeps what was chosen for a job that waits; false if it does no longer. */
	boolean choose(UUID id, Choice choice) {
		return this.jdbc.sql("update import_job set mapping = ? where id = ? and state = 'MAPPING'")
			.params(choice.asText(), id)
			.update() == 1;
	}

	/** Starts a job that waits; false if it does no longer. */
	boolean start(UUID id, Choice choice) {
		return this.jdbc.sql("update import_job set state = 'RUNNING', mapping = ? where id = ? and state = 'MAPPING'")
			.params(choice.asText(), id)
			.update() == 1;
	}

	/**
	 * Lets the transaction commit without waiting for the disk. The transaction that ends
	 * the job waits, and with it for all before it: a job that is done is on the disk. A
	 * crash of the database loses the rows not yet taken in too, so that the job fails
	 * and says so, and the file can be sent again.
	 */
	void commitWithoutWaiting() {
		this.jdbc.sql("set local synchronous_commit = off").update();
	}

	/** Counts what came of a person's rows, and notes that the job is done to there. */
	void count(UUID id, Tally tally, String person) {
		this.jdbc.sql("""
				update import_job set rows_read = rows_read + ?, stored = stored + ?, unchanged = unchanged + ?,
					corrected = corrected + ?, rejected = rejected + ?, people_created = people_created + ?,
					people_matched = people_matched + ?, first_day = least(first_day, ?::date),
					last_day = greatest(last_day, ?::date), done_to = ?
				where id = ?""")
			.params(tally.read(), tally.stored(), tally.unchanged(), tally.corrected(), tally.rejected(),
					tally.created(), tally.matched())
			.param(tally.firstDay())
			.param(tally.lastDay())
			.param(person)
			.param(id)
			.update();
	}

	/** The last person dealt with, as the file has it; empty before the first. */
	Optional<String> doneTo(UUID id) {
		return this.jdbc.sql("select done_to from import_job where id = ? and done_to is not null")
			.param(id)
			.query(String.class)
			.optional();
	}

	void finish(UUID id, Instant now) {
		end(id, "DONE", null, now);
	}

	void fail(UUID id, Message problem, Instant now) {
		end(id, "FAILED", MessageJson.write(problem), now);
	}

	private void end(UUID id, String state, @Nullable String problem, Instant now) {
		this.jdbc.sql("update import_job set state = ?, problem = ?, finished_at = ?, done_to = null where id = ?")
			.param(state)
			.param(problem)
			.param(OffsetDateTime.ofInstant(now, ZoneOffset.UTC))
			.param(id)
			.update();
	}

	Optional<ImportJob> find(UUID id) {
		return this.jdbc.sql("select * from import_job where id = ?").param(id).query(ImportJobs::read).optional();
	}

	/** The latest jobs of a team, newest first. */
	List<ImportJob> latest(UUID teamId, int most) {
		return this.jdbc.sql("select * from import_job where team_id = ? order by started_at desc, id desc limit ?")
			.params(teamId, most)
			.query(ImportJobs::read)
			.list();
	}

	/** Jobs that were running when Fallow stopped. */
	List<ImportJob> unfinished() {
		return this.jdbc.sql("select * from import_job where state = 'RUNNING' order by started_at, id")
			.query(ImportJobs::read)
			.list();
	}

	private static ImportJob read(ResultSet row, int number) throws SQLException {
		String mapping = row.getString("mapping");
		String problem = row.getString("problem");
		Timestamp started = row.getTimestamp("started_at");
		return new ImportJob(row.getObject("id", UUID.class), row.getObject("team_id", UUID.class),
				new PersonId(row.getObject("actor_id", UUID.class)), row.getString("file_name"),
				ImportJob.State.valueOf(row.getString("state")), texts(row.getArray("headers")),
				mapping.isBlank() ? null : Choice.parse(mapping), started.toInstant(), counts(row),
				row.getObject("first_day", LocalDate.class), row.getObject("last_day", LocalDate.class),
				(problem == null) ? null : MessageJson.read(problem));
	}

	private static ImportJob.Counts counts(ResultSet row) throws SQLException {
		return new ImportJob.Counts(row.getInt("rows_total"), row.getInt("rows_read"), row.getInt("stored"),
				row.getInt("unchanged"), row.getInt("corrected"), row.getInt("rejected"), row.getInt("people_created"),
				row.getInt("people_matched"));
	}

	static List<String> texts(Array array) throws SQLException {
		return List.of((String[]) array.getArray());
	}

}
