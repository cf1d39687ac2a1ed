package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.fallow.entry.SessionLog;

/**
 * The sessions known so far as they stand, in the order of their days: the latest log of
 * each key.
 */
final class SessionsByDay {

	private final Map<String, SessionLog> byKey = new LinkedHashMap<>();

	private final ArrayList<SessionLog> byDay = new ArrayList<>();

	/** Those from a day on. */
	SessionsByDay from(LocalDate day) {
		SessionsByDay copy = new SessionsByDay();
		this.byDay.subList(indexOf(day), this.byDay.size()).forEach(copy::add);
		return copy;
	}

	void add(SessionLog session) {
		SessionLog before = this.byKey.put(session.key(), session);
		if (before != null) {
			this.byDay.removeIf((log) -> log == before);
		}
		this.byDay.add(indexOf(session.day().plusDays(1)), session);
	}

	/** Those that count, of the days from a day to a day, both inclusive. */
	List<SessionLog> between(LocalDate from, LocalDate to) {
		List<SessionLog> found = new ArrayList<>();
		for (int i = indexOf(from); i < this.byDay.size() && !this.byDay.get(i).day().isAfter(to); i++) {
			if (!this.byDay.get(i).removed()) {
				found.add(this.byDay.get(i));
			}
		}
		return found;
	}

	/** The first session on or after a day, looked for from the end. */
	private int indexOf(LocalDate day) {
		int index = this.byDay.size();
		while (index > 0 && !this.byDay.get(index - 1).day().isBefore(day)) {
			index--;
		}
		return index;
	}

}
