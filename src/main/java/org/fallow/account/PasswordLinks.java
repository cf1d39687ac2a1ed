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
import org.jspecify.annotations.Nullable;

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

	/**
	 * Draws a link's secret; an earlier one of the person no longer works. The maker is
	 * named where it is made by somebody else.
	 */
	String issue(PersonId person, Duration life, @Nullable String maker) {
		Secret secret = Secret.draw();
		Instant now = this.clock.instant();
		this.jdbc.sql("""
				insert into password_link (person_id, token_hash, issued_at, expires_at, made_by) values (?, ?, ?, ?, ?)
				on conflict (person_id) do update set token_hash = excluded.token_hash, made_by = excluded.made_by,
				issued_at = excluded.issued_at, expires_at = excluded.expires_at, used_at = null""")
			.params(person.value(), secret.hash(), at(now), at(now.plus(life)))
			.param(maker)
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
	Optional<Used> use(String hash) {
		OffsetDateTime now = at(this.clock.instant());
		return this.jdbc.sql("""
				update password_link set used_at = ? where token_hash = ? and used_at is null and expires_at > ?
				returning person_id, made_by""")
			.params(now, hash, now)
			.query((row, number) -> new Used(new PersonId(row.getObject("person_id", UUID.class)),
					row.getString("made_by")))
			.optional();
	}

	/**
	 * A link that was used up.
	 *
	 * @param person whose account it was for
	 * @param maker who had made it for somebody else; absent where it was mailed
	 */
	record Used(PersonId person, @Nullable String maker) {
	}

	private static OffsetDateTime at(Instant instant) {
		return instant.atOffset(ZoneOffset.UTC);
	}

}
