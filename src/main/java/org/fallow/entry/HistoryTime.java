package org.fallow.entry;

import java.time.LocalTime;

/**
 * Local times at which imported history counts as known.
 */
public final class HistoryTime {

	/** Mornings, absences, medicines and known symptoms. */
	public static final LocalTime MORNING = LocalTime.of(6, 0);

	/** What people said or decided about an illness. */
	public static final LocalTime EVENT = LocalTime.of(12, 0);

	/** Sessions. */
	public static final LocalTime SESSION = LocalTime.of(20, 0);

	private HistoryTime() {
	}

}
