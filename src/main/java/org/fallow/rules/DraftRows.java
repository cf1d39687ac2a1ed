package org.fallow.rules;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The rows of drafts. Every call needs a transaction.
 */
@Component
class DraftRows {

	private final JdbcClient client;

	DraftRows(JdbcClient client) {
		this.client = client;
	}

	void insert(RuleDraft draft) {
		this.client.sql("""
				insert into rule_draft (id, team_id, based_on, canonical, state, started_by, started_at, changed_at,
					changes)
				values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
			.params(draft.id(), draft.teamId(), draft.basedOn(), RuleJson.canonical(draft.rules()),
					draft.state().name(), draft.startedBy().value(), draft.startedAt().atOffset(ZoneOffset.UTC),
					draft.changedAt().atOffset(ZoneOffset.UTC), draft.changes())
			.update();
	}

	Optional<RuleDraft> find(UUID id) {
		return this.client.sql("select * from rule_draft where id = ?").param(id).query(DraftRows::draft).optional();
	}

	/** Nobody else changes it until the transaction ends. */
	Optional<RuleDraft> lock(UUID id) {
		return this.client.sql("select * from rule_draft where id = ? for update")
			.param(id)
			.query(DraftRows::draft)
			.optional();
	}

	/** Nobody else adopts for the team until the transaction ends. */
	void lockTeam(UUID teamId) {
		this.client.sql("select id from team where id = ? for update").param(teamId).query(UUID.class).single();
	}

	List<RuleDraft> open(UUID teamId) {
		return this.client.sql("select * from rule_draft where team_id = ? and state = 'OPEN' order by started_at desc")
			.param(teamId)
			.query(DraftRows::draft)
			.list();
	}

	void change(UUID id, RuleSet rules, Instant at) {
		this.client.sql("update rule_draft set canonical = ?, changed_at = ?, changes = changes + 1 where id = ?")
			.params(RuleJson.canonical(rules), at.atOffset(ZoneOffset.UTC), id)
			.update();
	}

	void end(UUID id, RuleDraft.State state, Instant at) {
		this.client.sql("update rule_draft set state = ?, changed_at = ? where id = ?")
			.params(state.name(), at.atOffset(ZoneOffset.UTC), id)
			.update();
	}

	private static RuleDraft draft(ResultSet row, int number) throws SQLException {
		return new RuleDraft(row.getObject("id", UUID.class), row.getObject("team_id", UUID.class),
				row.getInt("based_on"), RuleJson.parse(row.getString("canonical")),
				RuleDraft.State.valueOf(row.getString("state")), new PersonId(row.getObject("started_by", UUID.class)),
				instant(row, "started_at"), instant(row, "changed_at"), row.getInt("changes"));
	}

	private static Instant instant(ResultSet row, String column) throws SQLException {
		return row.getObject(column, OffsetDateTime.class).toInstant();
	}

}
