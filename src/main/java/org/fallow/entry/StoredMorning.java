package org.fallow.entry;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;

/**
 * A morning entry as stored.
 *
 * @param entry the entry
 * @param revision counting from 1 for each day
 * @param rrMs RR intervals it was computed from, ms; empty when none
 * @param actor who entered it
 * @param source by which way
 * @param requestId the sending that stored it
 */
public record StoredMorning(MorningEntry entry, int revision, List<Integer> rrMs, PersonId actor, Source source,
		UUID requestId) {

	/** Copies the intervals. */
	public StoredMorning {
		rrMs = List.copyOf(rrMs);
	}

	/**
	 * The morning.
	 * @return civil day in the athlete's zone
	 */
	public LocalDate day() {
		return this.entry.day();
	}

}
