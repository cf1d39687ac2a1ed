package org.fallow.account;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * One-time links by which a person sets a password. Only the newest of a person works,
 * once, until its end; only its hash is kept. Every call takes part in a transaction of
 * {@link SignInWork}.
 */
@Component
class PasswordLinks {

	private static final SecureRandom RANDOM = new SecureRandom();

	private static final int TOKEN_BYTES = 32;

	/** Characters of 32 bytes in Base64url. */
	private static final int TOKEN_LENGTH = 43;

	private final JdbcClient jdbc;

	private final Clock clock;

	PasswordLinks(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/** Draws a link's token; an earlier one of the person no longer works. */
	String issue(PersonId person, Duration life) {
		byte[] random = new byte[TOKEN_BYTES];
		RANDOM.nextBytes(random);
		String token = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
		Instant now = this.clock.instant();
		this.jdbc.sql("""
				insert into password_link (person_id, token_hash, issued_at, expires_at) values (?, ?, ?, ?)
				on conflict (person_id) do update set token_hash = excluded.token_hash,
				issued_at = excluded.issued_at, expires_at = excluded.expires_at, used_at = null""")
			.params(person.value(), Hashes.sha256(token), at(now), at(now.plus(life)))
			.update();
		return token;
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

	/** Whose link it is, as long as it works. */
	Optional<PersonId> holder(String token) {
		return this.jdbc
			.sql("select person_id from password_link where token_hash = ? and used_at is null and expires_at > ?")
			.params(hash(token), at(this.clock.instant()))
			.query(UUID.class)
			.optional()
			.map(PersonId::new);
	}

	/** Uses the link up: of two at once one gets the person, the other nobody. */
	Optional<PersonId> use(String token) {
		OffsetDateTime now = at(this.clock.instant());
		return this.jdbc.sql("""
				update password_link set used_at = ? where token_hash = ? and used_at is null and expires_at > ?
				returning person_id""").params(now, hash(token), now).query(UUID.class).optional().map(PersonId::new);
	}

	private static String hash(String token) {
		return (token.length() == TOKEN_LENGTH) ? Hashes.sha256(token) : "";
	}

	private static OffsetDateTime at(Instant instant) {
		return instant.atOffset(ZoneOffset.UTC);
	}

}
