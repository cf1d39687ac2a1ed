package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * The next gate of an episode: every criterion, evaluated and kept. The decision is
 * computed from these same records.
 *
 * @param from stage before the gate, 0 for ill
 * @param to stage after it; one more than the path has stages for the close
 * @param closes whether it closes the episode
 * @param criteria all of them, in the order of reading
 * @param opened whether the gate opened on this day
 * @param earliest earliest day it could open if every coming morning were good; absent
 * where that alone cannot open it
 */
public record GateSheet(int from, int to, boolean closes, List<Criterion> criteria, boolean opened,
		@Nullable LocalDate earliest) {

	/** Copies the criteria. */
	public GateSheet {
		criteria = List.copyOf(criteria);
	}

	/** The same with the days since when each criterion stands as it does. */
	GateSheet since(List<Standing> before, LocalDate day) {
		List<Criterion> dated = this.criteria.stream()
			.map((criterion) -> criterion.withSince(before.stream()
				.filter((s) -> s.code().equals(criterion.code()) && s.state() == criterion.state())
				.map(Standing::since)
				.findFirst()
				.orElse(day)))
			.toList();
		return new GateSheet(this.from, this.to, this.closes, dated, this.opened, this.earliest);
	}

	List<Standing> standing(LocalDate day) {
		return this.criteria.stream()
			.map((c) -> new Standing(c.code(), c.state(), (c.since() == null) ? day : c.since()))
			.toList();
	}

	boolean isOpen() {
		return this.criteria.stream().noneMatch(Criterion::shuts);
	}

}
