package org.fallow.exchange.calendar;

import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;

import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.access.Secret;
import org.fallow.access.TraceSubject;
import org.fallow.team.AthleteAccess;
import org.fallow.team.OfAthlete;
import org.fallow.team.Squad;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * The addresses of calendars. An address is a secret that alone opens the calendar; the
 * newest of an athlete works until it is ended, and only its hash is kept. The database
 * shows an athlete's to nobody else.
 */
@Service
public class CalendarAddresses {

	private static final Pattern SECRET = Pattern.compile("[A-Za-z0-9_-]{43}");

	private final JdbcClient jdbc;

	private final AthleteAccess access;

	private final Squad squad;

	private final Clock clock;

	private final TransactionTemplate transaction;

	CalendarAddresses(JdbcClient jdbc, AthleteAccess access, Squad squad, Clock clock,
			PlatformTransactionManager transactions) {
		this.access = access;
		this.squad = squad;
		this.jdbc = jdbc;
		this.clock = clock;
		this.transaction = new TransactionTemplate(transactions);
		this.transaction.setReadOnly(true);
	}

	/**
	 * Whose calendar an address shows, for a request of nobody.
	 * @param secret as it came
	 * @return empty for one that was ended, replaced or made up
	 */
	public Optional<PersonId> holder(String secret) {
		if (!SECRET.matcher(secret).matches()) {
			return Optional.empty();
		}
		String hash = new Secret(secret).hash();
		return Purpose.CALENDAR
			.call(() -> Objects.requireNonNull(this.transaction.execute((status) -> holderOf(hash))));
	}

	private Optional<PersonId> holderOf(String hash) {
		return this.jdbc.sql("select person_id from calendar_feed where token_hash = ? and revoked_at is null")
			.param(hash)
			.query(UUID.class)
			.optional()
			.map(PersonId::new);
	}

	/**
	 * When the address that works now was made.
	 * @param athlete whose
	 * @return empty if there is none
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public Optional<Instant> madeAt(PersonId athlete) {
		return this.jdbc.sql("select made_at from calendar_feed where person_id = ? and revoked_at is null")
			.param(athlete.value())
			.query(OffsetDateTime.class)
			.optional()
			.map(OffsetDateTime::toInstant);
	}

	/**
	 * Makes an address; an earlier one no longer works.
	 * @param athlete whose
	 * @return its secret, to be shown once
	 */
	@OfAthlete
	@Transactional
	public Secret make(PersonId athlete) {
		Secret secret = Secret.draw();
		this.jdbc.sql("""
				insert into calendar_feed (person_id, token_hash, made_at) values (?, ?, ?)
				on conflict (person_id) do update set token_hash = excluded.token_hash, made_at = excluded.made_at,
					revoked_at = null""").params(athlete.value(), secret.hash(), now()).update();
		note(athlete, TraceSubject.CALENDAR_MADE);
		return secret;
	}

	/**
	 * Ends the address that works now, if there is one.
	 * @param athlete whose
	 */
	@OfAthlete
	@Transactional
	public void revoke(PersonId athlete) {
		int ended = this.jdbc.sql("update calendar_feed set revoked_at = ? where person_id = ? and revoked_at is null")
			.params(now(), athlete.value())
			.update();
		if (ended > 0) {
			note(athlete, TraceSubject.CALENDAR_ENDED);
		}
	}

	private void note(PersonId athlete, TraceSubject what) {
		this.access.changed(this.squad.athlete(athlete), what);
	}

	private OffsetDateTime now() {
		return this.clock.instant().atOffset(ZoneOffset.UTC);
	}

}
