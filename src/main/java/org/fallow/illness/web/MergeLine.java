package org.fallow.illness.web;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;

import org.fallow.illness.PersonMerge;
import org.jspecify.annotations.Nullable;

/**
 * A merge as a list shows it.
 *
 * @param id for links
 * @param keptId the entry kept, for links
 * @param kept its name
 * @param other the other entry's name
 * @param on the day of it
 * @param by the coach's name; empty where not known
 * @param reason the coach's reason
 * @param undoneOn the day it was taken back; absent while it stands
 * @param until the last day on which it can surely be taken back
 * @param undoable whether nothing stands against taking it back now
 */
public record MergeLine(UUID id, UUID keptId, String kept, String other, LocalDate on, String by, String reason,
		@Nullable LocalDate undoneOn, LocalDate until, boolean undoable) {

	static MergeLine of(PersonMerge merge, ZoneId zone, boolean undoable) {
		LocalDate undone = (merge.undoneAt() == null) ? null : LocalDate.ofInstant(merge.undoneAt(), zone);
		return new MergeLine(merge.id(), merge.kept().value(), merge.keptName(), merge.otherName(), merge.on(),
				merge.by(), merge.reason(), undone, merge.on().plusDays(PersonMerge.UNDOABLE.toDays() - 1), undoable);
	}

}
