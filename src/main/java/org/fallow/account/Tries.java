package org.fallow.account;

import java.time.Duration;
import java.time.Instant;

/**
 * Failures in a row under one key, and until when no further try is looked at.
 *
 * @param failures how many
 * @param last when the last one began
 * @param blockedUntil exclusive; not after {@code last} when nothing is blocked
 */
record Tries(int failures, Instant last, Instant blockedUntil) {

	private static final Duration LONGEST = Duration.ofMinutes(15);

	/** So long after the last failure the count begins anew. */
	static final Duration FORGOTTEN_AFTER = Duration.ofDays(1);

	/** The wait grows to its longest within so many doublings. */
	private static final int DOUBLINGS = 10;

	/** How long one has to wait, zero when a try will be looked at. */
	Duration waitAt(Instant now) {
		return this.blockedUntil.isAfter(now) ? Duration.between(now, this.blockedUntil) : Duration.ZERO;
	}

	/**
	 * One more failure: the {@code free}-th blocks for two seconds, each later one twice
	 * as long, up to a quarter of an hour.
	 */
	Tries failedAt(Instant now, int free) {
		boolean forgotten = this.last.plus(FORGOTTEN_AFTER).isBefore(now);
		int count = forgotten ? 1 : this.failures + 1;
		return new Tries(count, now, now.plus(waitAfter(count, free)));
	}

	/** Takes back a failure that turned out to be none. */
	Tries withoutOne(int free) {
		int count = Math.max(0, this.failures - 1);
		return new Tries(count, this.last, this.last.plus(waitAfter(count, free)));
	}

	private static Duration waitAfter(int count, int free) {
		if (count < free) {
			return Duration.ZERO;
		}
		Duration doubled = Duration.ofSeconds(1L << Math.min(DOUBLINGS, count - free + 1));
		return (doubled.compareTo(LONGEST) < 0) ? doubled : LONGEST;
	}

}
