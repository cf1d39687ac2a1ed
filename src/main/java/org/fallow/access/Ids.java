package org.fallow.access;

import java.security.SecureRandom;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Draws ids: UUID version 7 (RFC 9562, method 1 with a 12-bit counter after the
 * milliseconds), so that later ids sort later within one process and index pages fill in
 * order.
 */
public final class Ids {

	private static final int COUNTER_BITS = 12;

	private static final SecureRandom RANDOM = new SecureRandom();

	/** Milliseconds since 1970 in the upper bits, the counter in the lower twelve. */
	private static final AtomicLong LAST = new AtomicLong();

	private Ids() {
	}

	/**
	 * Draws the next id.
	 * @return an id greater, as text and as PostgreSQL sorts it, than every id drawn
	 * before in this process; a clock set back does not change that
	 */
	public static UUID next() {
		long now = System.currentTimeMillis() << COUNTER_BITS;
		long tick = LAST.accumulateAndGet(now, (last, current) -> Math.max(last + 1, current));
		long high = ((tick >>> COUNTER_BITS) << 16) | 0x7000L | (tick & 0xFFFL);
		long low = 0x8000_0000_0000_0000L | (RANDOM.nextLong() >>> 2);
		return new UUID(high, low);
	}

}
