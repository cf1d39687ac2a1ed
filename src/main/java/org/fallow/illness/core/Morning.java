package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.MorningEntry;

/**
 * One civil day's morning with all its revisions, in the order recorded.
 *
 * @param revisions at least one
 */
record Morning(List<MorningEntry> revisions) {

	Morning {
		revisions = List.copyOf(revisions);
	}

	MorningEntry effective() {
		return this.revisions.get(this.revisions.size() - 1);
	}

	LocalDate day() {
		return effective().day();
	}

	/** Whether it was entered on its own day: only then it counts in a row. */
	boolean isOnTime() {
		return this.revisions.stream().anyMatch((entry) -> !entry.recorded().on().isAfter(entry.day()));
	}

}
