package org.fallow.illness;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * That two entries are one person.
 *
 * @param id names it
 * @param kept the entry that stays
 * @param keptName its name
 * @param other the entry that was put aside
 * @param otherName its name
 * @param by name of the coach who said so; empty where the present person may not read it
 * @param at when
 * @param on civil day of it in the zone of the entry kept
 * @param reason why, in the coach's words
 * @param undoneAt when it was taken back; absent while it stands
 */
public record PersonMerge(UUID id, PersonId kept, String keptName, PersonId other, String otherName, String by,
		Instant at, LocalDate on, String reason, @Nullable Instant undoneAt) {

	/** How long it can be taken back. */
	public static final Duration UNDOABLE = Duration.ofDays(30);

	/**
	 * Whether it stands.
	 * @return false once it was taken back
	 */
	public boolean stands() {
		return this.undoneAt == null;
	}

	/**
	 * Until when it can be taken back.
	 * @return the first instant at which it no longer can
	 */
	public Instant undoableUntil() {
		return this.at.plus(UNDOABLE);
	}

}
