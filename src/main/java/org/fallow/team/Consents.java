package org.fallow.team;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What athletes agreed to. Only the athlete takes consent back, at any time, and in the
 * same moment no coach sees anything any more.
 */
@Service
@Transactional
public class Consents {

	/** Names the words that people read today; another text needs another name. */
	public static final String WORDS = "2026-11";

	private final JdbcClient jdbc;

	private final CurrentPerson current;

	private final Clock clock;

	Consents(JdbcClient jdbc, CurrentPerson current, Clock clock) {
		this.jdbc = jdbc;
		this.current = current;
		this.clock = clock;
	}

	/** Notes on whose word data of an athlete are kept; it is no consent. */
	void kept(PersonId athlete, UUID teamId, Kept kept) {
		add(athlete, teamId, Consent.Kind.KEPT, kept.basis(), kept.guardian());
	}

	/**
	 * The athlete agrees that the coaches of the home team see the data.
	 * @param athlete who
	 * @param guardian who agreed for an athlete under 18; absent for an adult
	 */
	public void give(PersonId athlete, @Nullable Guardian guardian) {
		UUID team = team(athlete).orElseThrow(() -> new NoSuchAthlete(athlete));
		this.jdbc.sql("update membership set shares = true where person_id = ? and team_id = ?")
			.params(athlete.value(), team)
			.update();
		add(athlete, team, Consent.Kind.GIVEN, null, guardian);
	}

	/**
	 * The athlete takes the consent back and stays in the team.
	 * @param athlete who
	 */
	public void withdraw(PersonId athlete) {
		UUID team = team(athlete).orElseThrow(() -> new NoSuchAthlete(athlete));
		this.jdbc.sql("update membership set shares = false where person_id = ? and team_id = ?")
			.params(athlete.value(), team)
			.update();
		add(athlete, team, Consent.Kind.WITHDRAWN, null, null);
	}

	/**
	 * The athlete leaves the team. The data stays the athlete's own.
	 * @param athlete who
	 */
	public void leave(PersonId athlete) {
		UUID team = team(athlete).orElseThrow(() -> new NoSuchAthlete(athlete));
		this.jdbc.sql("update membership set shares = false, left_at = ? where person_id = ? and team_id = ?")
			.params(now(), athlete.value(), team)
			.update();
		add(athlete, team, Consent.Kind.LEFT, null, null);
	}

	/**
	 * Whether the athlete's coaches see the data now.
	 * @param athlete who
	 * @return true while in a team and sharing
	 */
	@Transactional(readOnly = true)
	public boolean shares(PersonId athlete) {
		return this.jdbc
			.sql("select exists (select 1 from membership where person_id = ? and shares and left_at is null)")
			.param(athlete.value())
			.query(Boolean.class)
			.single();
	}

	/**
	 * The team an athlete is in now.
	 * @param athlete who
	 * @return the team; empty for one who left
	 */
	@Transactional(readOnly = true)
	public Optional<UUID> team(PersonId athlete) {
		return this.jdbc.sql("select team_id from membership where person_id = ? and left_at is null")
			.param(athlete.value())
			.query(UUID.class)
			.optional();
	}

	/**
	 * All that an athlete agreed to and took back.
	 * @param athlete who
	 * @return newest first
	 */
	@Transactional(readOnly = true)
	public List<Consent> of(PersonId athlete) {
		return this.jdbc
			.sql("select c.kind, c.team_id, c.at, p.name as by_name, c.basis, c.guardian, c.guardian_role "
					+ "from consent c left join person p on p.id = c.actor_id where c.athlete_id = ? "
					+ "order by c.at desc, c.id desc")
			.param(athlete.value())
			.query(Consents::consent)
			.list();
	}

	private void add(PersonId athlete, UUID team, Consent.Kind kind, @Nullable Basis basis,
			@Nullable Guardian guardian) {
		this.jdbc.sql("""
				insert into consent (athlete_id, id, team_id, kind, at, actor_id, words_version, basis, guardian,
					guardian_role)
				values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
			.params(athlete.value(), Ids.next(), team, kind.name(), now(), this.current.id().orElse(athlete).value(),
					WORDS)
			.param((basis == null) ? null : basis.name())
			.param((guardian == null) ? null : guardian.name())
			.param((guardian == null) ? null : guardian.role())
			.update();
	}

	private OffsetDateTime now() {
		return this.clock.instant().atOffset(ZoneOffset.UTC);
	}

	private static Consent consent(ResultSet row, int number) throws SQLException {
		String basis = row.getString("basis");
		return new Consent(Consent.Kind.valueOf(row.getString("kind")), row.getObject("team_id", UUID.class),
				row.getObject("at", OffsetDateTime.class).toInstant(), row.getString("by_name"),
				(basis == null) ? null : Basis.valueOf(basis), row.getString("guardian"),
				row.getString("guardian_role"));
	}

}
