package org.fallow.account;

import java.time.Duration;
import java.time.Instant;

/**
 * Failures in a row under one key, and until when no further try is looked at.
 *
 * @param failures how many
 * @param last when the last one began
 * @param blockedUntil exclusive; 1970 when nothing is blocked, so that clocks may differ
 */
record Tries(int failures, Instant last, Instant blockedUntil) {

	private static final Duration LONGEST = Duration.ofMinutes(15);

	/**
	 * A failure is forgiven for each such time without one, or a club's network would
	 * never rest.
	 */
	private static final Duration FORGIVEN_AFTER = Duration.ofMinutes(15);

	/** So long after the last failure nothing needs to be kept. */
	static final Duration FORGOTTEN_AFTER = Duration.ofDays(1);

	/** The wait grows to its longest within so many doublings. */
	private static final int DOUBLINGS = 10;

	/** How long one has to wait, zero when a try will be looked at. */
	Duration waitAt(Instant now) {
		return this.blockedUntil.isAfter(now) ? Duration.between(now, this.blockedUntil) : Duration.ZERO;
	}

	/**
	 * One more failure: the {@code free}-th blocks for two seconds, each later one twice
	 * as long, up to a quarter of an hour. One is forgiven for each quarter of an hour
	 * without any.
	 */
	Tries failedAt(Instant now, int free) {
		long forgiven = Math.max(0, Duration.between(this.last, now).dividedBy(FORGIVEN_AFTER));
		int count = (int) Math.max(0, this.failures - forgiven) + 1;
		return new Tries(count, now, blockedUntil(count, now, free));
	}

	/** Takes back a failure that turned out to be none. */
	Tries withoutOne(int free) {
		int count = Math.max(0, this.failures - 1);
		return new Tries(count, this.last, blockedUntil(count, this.last, free));
	}

	private static Instant blockedUntil(int count, Instant failed, int free) {
		if (count < free) {
			return Instant.EPOCH;
		}
		Duration doubled = Duration.ofSeconds(1L << Math.min(DOUBLINGS, count - free + 1));
		return failed.plus((doubled.compareTo(LONGEST) < 0) ? doubled : LONGEST);
	}

}
