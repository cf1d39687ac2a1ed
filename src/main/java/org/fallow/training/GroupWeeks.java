package org.fallow.training;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.fallow.training.core.ProgrammeWeek;

/** The written weeks of a group's programme, asked once for all who run it. */
final class GroupWeeks {

	/** Of somebody without a group, or with one that the present person may not see. */
	static final GroupWeeks NONE = new GroupWeeks(Map.of());

	private final TreeMap<LocalDate, ProgrammeWeek> weeks;

	/**
	 * Some weeks.
	 * @param weeks by Monday
	 */
	GroupWeeks(Map<LocalDate, ProgrammeWeek> weeks) {
		this.weeks = new TreeMap<>(weeks);
	}

	/** The weeks that hold any of some days, in their order. */
	List<ProgrammeWeek> of(LocalDate from, LocalDate to) {
		LocalDate monday = Programmes.mondayOf(from);
		Collection<ProgrammeWeek> found = to.isBefore(monday) ? List.of()
				: this.weeks.subMap(monday, true, to, true).values();
		return List.copyOf(found);
	}

}
