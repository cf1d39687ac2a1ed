package org.fallow.account;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

import org.fallow.access.NetworkAddress;
import org.fallow.access.Secret;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Slows down whoever guesses: by name and by network, on all nodes together. A try counts
 * as a failure from its beginning, so that a hundred at once gain nothing.
 */
@Component
class SignInDelay {

	private final JdbcClient jdbc;

	private final TransactionTemplate transaction;

	private final Clock clock;

	SignInDelay(JdbcClient jdbc, PlatformTransactionManager transactions, Clock clock) {
		this.jdbc = jdbc;
		this.transaction = new TransactionTemplate(transactions);
		this.transaction.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
		this.clock = clock;
	}

	/**
	 * Begins a try. One that has to wait is not counted, and nothing must be hashed for
	 * it.
	 * @return how long to wait before the next one; zero when this one may go on
	 */
	Duration begin(Key... keys) {
		return Objects.requireNonNull(this.transaction.execute((status) -> counted(this.clock.instant(), keys)));
	}

	private Duration counted(Instant now, Key... keys) {
		List<Tries> found = Arrays.stream(keys).map((key) -> locked(key, now)).toList();
		Duration wait = found.stream().map((tries) -> tries.waitAt(now)).max(Comparator.naturalOrder()).orElseThrow();
		if (wait.isZero()) {
			for (int i = 0; i < keys.length; i++) {
				store(keys[i], found.get(i).failedAt(now, keys[i].free()));
			}
		}
		return wait;
	}

	/** Takes the try that was begun back: a name's count ends, a network's goes on. */
	void succeeded(Key name, Key... networks) {
		this.transaction.executeWithoutResult((status) -> {
			clear(name);
			for (Key network : networks) {
				store(network, locked(network, this.clock.instant()).withoutOne(network.free()));
			}
			forgetOld();
		});
	}

	/** Lets a name be tried again at once. */
	void clear(Key name) {
		this.jdbc.sql("delete from sign_in_tries where key_hash = ?").param(name.hash()).update();
	}

	/**
	 * Always the name first and the network after it, so that two tries never wait for
	 * each other.
	 */
	private Tries locked(Key key, Instant now) {
		this.jdbc.sql("""
				insert into sign_in_tries (key_hash, failures, last_failure_at, blocked_until)
				values (?, 0, ?, ?) on conflict (key_hash) do nothing""")
			.params(key.hash(), at(now), at(Instant.EPOCH))
			.update();
		return this.jdbc
			.sql("select failures, last_failure_at, blocked_until from sign_in_tries where key_hash = ? for update")
			.param(key.hash())
			.query((row, number) -> new Tries(row.getInt("failures"),
					row.getObject("last_failure_at", OffsetDateTime.class).toInstant(),
					row.getObject("blocked_until", OffsetDateTime.class).toInstant()))
			.single();
	}

	private void store(Key key, Tries tries) {
		this.jdbc
			.sql("update sign_in_tries set failures = ?, last_failure_at = ?, blocked_until = ? where key_hash = ?")
			.params(tries.failures(), at(tries.last()), at(tries.blockedUntil()), key.hash())
			.update();
	}

	private void forgetOld() {
		this.jdbc.sql("""
				delete from sign_in_tries where key_hash in (select key_hash from sign_in_tries
				where last_failure_at < ? limit 100 for update skip locked)""")
			.param(at(this.clock.instant().minus(Tries.FORGOTTEN_AFTER)))
			.update();
	}

	private static OffsetDateTime at(Instant instant) {
		return instant.atOffset(ZoneOffset.UTC);
	}

	/**
	 * What tries are counted by.
	 *
	 * @param hash SHA-256 of kind and value
	 * @param free which failure is the first to block
	 */
	record Key(String hash, int free) {

		private static final int FREE_FOR_A_NAME = 5;

		private static final int FREE_FOR_A_NETWORK = 20;

		static Key name(String folded) {
			return new Key(Secret.sha256("name:" + folded), FREE_FOR_A_NAME);
		}

		/** An IPv4 address, or the network of an IPv6 address; all else is one. */
		static Key network(String address) {
			return new Key(
					Secret.sha256("network:" + NetworkAddress.of(address).map(NetworkAddress::network).orElse("")),
					FREE_FOR_A_NETWORK);
		}

	}

}
