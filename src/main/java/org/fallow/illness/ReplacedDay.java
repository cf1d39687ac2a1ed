package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.access.PersonId;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * A day that was decided otherwise before two entries were made one, or parted.
 *
 * @param entry of which entry
 * @param day the day
 * @param undone whether it was replaced when they were parted
 * @param before the clearance it had
 * @param stageBefore the stage it had; absent outside an episode
 * @param now the clearance the day has for the entry that is kept; absent if it has none
 * @param stageNow the stage it has; absent outside an episode
 */
public record ReplacedDay(PersonId entry, LocalDate day, boolean undone, Clearance before,
		@Nullable Integer stageBefore, @Nullable Clearance now, @Nullable Integer stageNow) {
}
