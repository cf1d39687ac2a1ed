package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
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
		List<Criterion> dated = new ArrayList<>(this.criteria.size());
		for (Criterion criterion : this.criteria) {
			dated.add(criterion.withSince(since(before, criterion, day)));
		}
		return new GateSheet(this.from, this.to, this.closes, dated, this.opened, this.earliest);
	}

	private static LocalDate since(List<Standing> before, Criterion criterion, LocalDate day) {
		for (Standing standing : before) {
			if (standing.state() == criterion.state() && standing.code().equals(criterion.code())) {
				return standing.since();
			}
		}
		return day;
	}

	List<Standing> standing(LocalDate day) {
		List<Standing> standing = new ArrayList<>(this.criteria.size());
		for (Criterion criterion : this.criteria) {
			LocalDate since = criterion.since();
			standing.add(new Standing(criterion.code(), criterion.state(), (since == null) ? day : since));
		}
		return standing;
	}

	boolean isOpen() {
		for (Criterion criterion : this.criteria) {
			if (criterion.shuts()) {
				return false;
			}
		}
		return true;
	}

}
