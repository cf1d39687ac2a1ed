package org.fallow.team;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.access.Secret;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Invitations by link: each works once, for some days, unless it is taken back.
 */
@Service
@Transactional
public class Invitations {

	/** How long an invitation works. */
	public static final Duration LIFE = Duration.ofDays(14);

	private static final String OPEN = "i.accepted_at is null and i.revoked_at is null and i.expires_at > ? ";

	private static final String INVITATION = """
			select i.id, i.kind, i.club_id, i.team_id, i.name, i.person_id, i.group_ids, i.whole_team, i.until_at,
				i.made_by, i.expires_at, t.name as team_name, k.name as club_name, p.name as made_by_name
			from invitation i join club k on k.id = i.club_id join person p on p.id = i.made_by
			left join team t on t.id = i.team_id where\s""" + OPEN;

	private final JdbcClient jdbc;

	private final Posts posts;

	private final Clock clock;

	Invitations(JdbcClient jdbc, Posts posts, Clock clock) {
		this.jdbc = jdbc;
		this.posts = posts;
		this.clock = clock;
	}

	/**
	 * Makes an invitation. An earlier open one for the same athlete on file ends.
	 * @param offer what is offered
	 * @param by who invites
	 * @return the secret of its link, told this once; empty if {@code by} may not invite
	 */
	public Optional<Secret> make(NewInvitation offer, PersonId by) {
		if (!mayInvite(by, offer)) {
			return Optional.empty();
		}
		Instant now = this.clock.instant();
		if (offer.person() != null) {
			this.jdbc
				.sql("update invitation set revoked_at = ? where person_id = ? and accepted_at is null "
						+ "and revoked_at is null")
				.params(at(now), offer.person().value())
				.update();
		}
		Secret secret = Secret.draw();
		this.jdbc.sql("""
				insert into invitation (id, team_id, club_id, kind, name, person_id, group_ids, whole_team, until_at,
					token_hash, made_by, made_at, expires_at)
				values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
			.param(Ids.next())
			.param(offer.teamId())
			.params(offer.clubId(), offer.kind(), offer.name())
			.param((offer.person() == null) ? null : offer.person().value())
			.params(offer.groups().toArray(UUID[]::new), offer.wholeTeam())
			.param((offer.until() == null) ? null : at(offer.until()))
			.params(secret.hash(), by.value(), at(now), at(now.plus(LIFE)))
			.update();
		return Optional.of(secret);
	}

	/**
	 * The open invitations into some teams, or into clubs as owners.
	 * @param teams the teams
	 * @param clubs the clubs
	 * @return by name
	 */
	@Transactional(readOnly = true)
	public List<Invitation> open(Collection<UUID> teams, Collection<UUID> clubs) {
		return this.jdbc
			.sql(INVITATION + "and (i.team_id = any (?) or (i.team_id is null and i.club_id = any (?))) "
					+ "order by i.name, i.id")
			.params(now(), teams.toArray(UUID[]::new), clubs.toArray(UUID[]::new))
			.query(Invitations::invitation)
			.list();
	}

	/**
	 * Takes an invitation back, at once.
	 * @param id which
	 * @param by who
	 * @return whether there was one that {@code by} may take back
	 */
	public boolean revoke(UUID id, PersonId by) {
		Optional<Invitation> found = this.jdbc.sql(INVITATION + "and i.id = ?")
			.params(now(), id)
			.query(Invitations::invitation)
			.optional()
			.filter((one) -> mayInvite(by, one.offer()));
		return found.isPresent() && this.jdbc.sql("update invitation i set revoked_at = ? where i.id = ? and " + OPEN)
			.params(now(), id, now())
			.update() == 1;
	}

	/**
	 * Finds an invitation by its link, before anybody is known: for
	 * {@link org.fallow.access.Purpose#SIGN_IN}.
	 * @param hash of the link's secret
	 * @return the invitation; empty if there is none, it expired, was used or taken back
	 */
	@Transactional(readOnly = true)
	public Optional<Invitation> find(String hash) {
		return this.jdbc.sql(INVITATION + "and i.token_hash = ?")
			.params(now(), hash)
			.query(Invitations::invitation)
			.optional();
	}

	/**
	 * Uses an invitation up. Of two who try at once one succeeds. What it offers is given
	 * in the same transaction.
	 * @param hash of the link's secret
	 * @param person who accepts; exists already
	 * @return whether it was still open
	 */
	@Transactional(propagation = Propagation.MANDATORY)
	public boolean use(String hash, PersonId person) {
		return this.jdbc
			.sql("update invitation i set accepted_at = ?, accepted_by = ? where i.token_hash = ? and " + OPEN)
			.params(now(), person.value(), hash, now())
			.update() == 1;
	}

	private boolean mayInvite(PersonId by, NewInvitation offer) {
		return this.posts.mayGive(by, offer.needs(), offer.clubId(), offer.teamId());
	}

	private OffsetDateTime now() {
		return at(this.clock.instant());
	}

	private static OffsetDateTime at(Instant instant) {
		return instant.atOffset(ZoneOffset.UTC);
	}

	private static Invitation invitation(ResultSet row, int number) throws SQLException {
		String kind = row.getString("kind");
		UUID person = row.getObject("person_id", UUID.class);
		OffsetDateTime until = row.getObject("until_at", OffsetDateTime.class);
		NewInvitation offer = new NewInvitation(Invitation.ATHLETE.equals(kind) ? null : Post.valueOf(kind),
				row.getObject("club_id", UUID.class), row.getObject("team_id", UUID.class), row.getString("name"),
				(person == null) ? null : new PersonId(person), List.of((UUID[]) row.getArray("group_ids").getArray()),
				row.getBoolean("whole_team"), (until == null) ? null : until.toInstant());
		return new Invitation(row.getObject("id", UUID.class), offer, row.getString("team_name"),
				row.getString("club_name"), new PersonId(row.getObject("made_by", UUID.class)),
				row.getString("made_by_name"), row.getObject("expires_at", OffsetDateTime.class).toInstant());
	}

}
