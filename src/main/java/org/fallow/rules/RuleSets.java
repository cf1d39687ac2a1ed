package org.fallow.rules;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

import org.fallow.team.ClubFounded;

import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * The rule sets of clubs. They are only ever added; each takes effect from a day.
 */
@Service
public class RuleSets {

	private final JdbcClient client;

	private final Map<String, RuleSet> parsed = new ConcurrentHashMap<>();

	RuleSets(JdbcClient client) {
		this.client = client;
	}

	/**
	 * The rule sets that decide for a team's athletes: those of its club.
	 * @param teamId the team
	 * @return the rule sets by the day they take effect
	 * @throws IllegalArgumentException if there is no such team
	 */
	@Transactional(readOnly = true)
	public RuleBook bookOf(UUID teamId) {
		List<RuleBook.Entry> entries = this.client.sql("""
				select r.effective_from, r.hash, r.canonical from rule_set r join team t on t.club_id = r.club_id
				where t.id = ? order by r.effective_from, r.version""")
			.param(teamId)
			.query((row, n) -> entry(row.getObject("effective_from", LocalDate.class), row.getString("hash"),
					row.getString("canonical")))
			.list();
		return new RuleBook(entries);
	}

	private RuleBook.Entry entry(LocalDate from, String hash, String canonical) {
		return new RuleBook.Entry(from, hash, this.parsed.computeIfAbsent(hash, (h) -> RuleJson.parse(canonical)));
	}

	@EventListener
	@Transactional(propagation = Propagation.MANDATORY)
	void giveTheDefault(ClubFounded club) {
		add(club.clubId(), 1, DefaultRules.ruleSet(), LocalDate.EPOCH, club.at());
	}

	private void add(UUID clubId, int version, RuleSet rules, LocalDate from, Instant at) {
		this.client.sql("""
				insert into rule_set (club_id, version, hash, canonical, effective_from, written_at)
				values (?, ?, ?, ?, ?, ?)""")
			.params(clubId, version, RuleHash.of(rules), RuleJson.canonical(rules), from, at.atOffset(ZoneOffset.UTC))
			.update();
	}

}
