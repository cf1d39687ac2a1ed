package org.fallow.account;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.Secret;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * One-time links by which a person sets a password. Only the newest of a person works,
 * once, until its end; only its hash is kept. Every call takes part in a transaction of
 * {@link SignInWork}.
 */
@Component
class PasswordLinks {

	private final JdbcClient jdbc;

	private final Clock clock;

	PasswordLinks(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/** Draws a link's secret; an earlier one of the person no longer works. */
	String issue(PersonId person, Duration life) {
		Secret secret = Secret.draw();
		Instant now = this.clock.instant();
		this.jdbc.sql("""
				insert into password_link (person_id, token_hash, issued_at, expires_at) values (?, ?, ?, ?)
				on conflict (person_id) do update set token_hash = excluded.token_hash,
				issued_at = excluded.issued_at, expires_at = excluded.expires_at, used_at = null""")
			.params(person.value(), secret.hash(), at(now), at(now.plus(life)))
			.update();
		return secret.text();
	}

	/**
	 * Whether the person got a link so short a time ago that another would be too many.
	 */
	boolean hasOneSince(PersonId person, Duration ago) {
		return this.jdbc.sql(
				"select exists (select 1 from password_link where person_id = ? and used_at is null and issued_at > ?)")
			.params(person.value(), at(this.clock.instant().minus(ago)))
			.query(Boolean.class)
			.single();
	}

	/** Whose link it is, by the hash of its secret, as long as it works. */
	Optional<PersonId> holder(String hash) {
		return this.jdbc
			.sql("select person_id from password_link where token_hash = ? and used_at is null and expires_at > ?")
			.params(hash, at(this.clock.instant()))
			.query(UUID.class)
			.optional()
			.map(PersonId::new);
	}

	/** Uses the link up: of two at once one gets the person, the other nobody. */
	Optional<PersonId> use(String hash) {
		OffsetDateTime now = at(this.clock.instant());
		return this.jdbc.sql("""
				update password_link set used_at = ? where token_hash = ? and used_at is null and expires_at > ?
				returning person_id""").params(now, hash, now).query(UUID.class).optional().map(PersonId::new);
	}

	private static OffsetDateTime at(Instant instant) {
		return instant.atOffset(ZoneOffset.UTC);
	}

}
