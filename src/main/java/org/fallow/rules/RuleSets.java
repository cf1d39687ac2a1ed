package org.fallow.rules;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

import org.fallow.access.PersonId;
import org.fallow.team.TeamAdded;
import org.jspecify.annotations.Nullable;

import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * The rule sets of teams. They are only ever added; each takes effect from a day. A text
 * whose hash is not the stored one is never decided by.
 */
@Service
public class RuleSets {

	/**
	 * The rule sets of the team {@code :team} in short, as an expression for a statement
	 * that reads other things too: what {@link #bookOf(UUID, String)} takes.
	 */
	public static final String LISTED = """
			(select string_agg((effective_from - date '1970-01-01') || ' ' || hash, ',' order by effective_from, version)
				from rule_set where team_id = :team)""";

	private final JdbcClient client;

	private final Map<String, RuleBook> books = new ConcurrentHashMap<>();

	private final Map<String, RuleSet> parsed = new ConcurrentHashMap<>();

	RuleSets(JdbcClient client) {
		this.client = client;
	}

	/**
	 * The rule sets that decide for a team's athletes.
	 * @param teamId the team
	 * @return the rule sets by the day they take effect
	 * @throws IllegalArgumentException if there is no such team
	 * @throws IllegalStateException if a stored text does not have its hash
	 */
	@Transactional(readOnly = true)
	public RuleBook bookOf(UUID teamId) {
		return new RuleBook(rows(teamId, "order by effective_from, version").stream()
			.map((v) -> new RuleBook.Entry(v.effectiveFrom(), v.hash(), v.rules()))
			.toList());
	}

	/**
	 * The rule sets that decide for a team's athletes, where a statement has just told
	 * which they are. Their texts, which never change, are read when first needed.
	 * @param teamId the team
	 * @param listed what {@link #LISTED} told; absent where there are none
	 * @return the rule sets by the day they take effect
	 * @throws IllegalArgumentException if there is no such team
	 * @throws IllegalStateException if a stored text does not have its hash
	 */
	public RuleBook bookOf(UUID teamId, @Nullable String listed) {
		RuleBook known = (listed == null) ? null : this.books.get(listed);
		if (known != null) {
			return known;
		}
		RuleBook book = bookOf(teamId);
		this.books.put(listed(book), book);
		return book;
	}

	/**
	 * The rule set that decides for a team's athletes on a day.
	 * @param teamId the team
	 * @param day a civil day
	 * @return the rule set
	 * @throws IllegalArgumentException if there is no such team
	 * @throws IllegalStateException if a stored text does not have its hash
	 */
	@Transactional(readOnly = true)
	public RuleSet on(UUID teamId, LocalDate day) {
		return bookOf(teamId).on(day).rules();
	}

	private static String listed(RuleBook book) {
		return book.entries()
			.stream()
			.map((entry) -> entry.from().toEpochDay() + " " + entry.hash())
			.collect(Collectors.joining(","));
	}

	/**
	 * All rule sets a team had, has and will have.
	 * @param teamId the team
	 * @return newest first
	 */
	@Transactional(readOnly = true)
	public List<RuleVersion> versionsOf(UUID teamId) {
		return rows(teamId, "order by version desc");
	}

	/**
	 * One of them.
	 * @param teamId the team
	 * @param version its number
	 * @return the rule set
	 * @throws NoSuchRules if the team has none of this number
	 */
	@Transactional(readOnly = true)
	public RuleVersion version(UUID teamId, int version) {
		return versionsOf(teamId).stream()
			.filter((one) -> one.version() == version)
			.findFirst()
			.orElseThrow(() -> new NoSuchRules(version));
	}

	/** Adds the next one; the caller has locked the team. */
	int add(UUID teamId, RuleSet rules, LocalDate from, Instant at, @Nullable PersonId by, @Nullable String reason) {
		String canonical = RuleJson.canonical(rules);
		return this.client.sql("""
				insert into rule_set (team_id, version, hash, canonical, effective_from, written_at, written_by, reason)
				values (:team, (select coalesce(max(version), 0) + 1 from rule_set where team_id = :team), :hash,
					:canonical, :from, :at, :by, :reason)
				returning version""")
			.param("team", teamId)
			.param("hash", RuleHash.ofText(canonical))
			.param("canonical", canonical)
			.param("from", from)
			.param("at", at.atOffset(ZoneOffset.UTC))
			.param("by", (by == null) ? null : by.value(), Types.OTHER)
			.param("reason", reason)
			.query(Integer.class)
			.single();
	}

	@EventListener
	@Transactional(propagation = Propagation.MANDATORY)
	void giveTheDefault(TeamAdded team) {
		add(team.teamId(), DefaultRules.ruleSet(), LocalDate.EPOCH, team.at(), null, null);
	}

	private List<RuleVersion> rows(UUID teamId, String order) {
		return this.client.sql("select * from rule_set where team_id = ? " + order)
			.param(teamId)
			.query(this::version)
			.list();
	}

	private RuleVersion version(ResultSet row, int number) throws SQLException {
		String hash = row.getString("hash");
		UUID by = row.getObject("written_by", UUID.class);
		return new RuleVersion(row.getObject("team_id", UUID.class), row.getInt("version"), hash,
				row.getObject("effective_from", LocalDate.class),
				row.getObject("written_at", OffsetDateTime.class).toInstant(), (by == null) ? null : new PersonId(by),
				row.getString("reason"), checked(hash, row.getString("canonical")));
	}

	private RuleSet checked(String hash, String canonical) {
		if (!RuleHash.ofText(canonical).equals(hash)) {
			throw new IllegalStateException("the stored text of rule set " + hash + " has another hash");
		}
		return this.parsed.computeIfAbsent(hash, (h) -> RuleJson.parse(canonical));
	}

}
