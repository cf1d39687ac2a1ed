package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.illness.core.Tick;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Something ticked today, and whether it may still be told to be a slip.
 *
 * @param code what, as the lists name it
 * @param day the day whose entry, session or report it is
 * @param tick the tick; absent for a red flag of a report, which is no slip
 * @param redFlag whether a hold followed from it
 * @param slip whether it was told to be a slip and not ticked again since
 * @param waits whether that waits for a coach
 * @param refusal why it may not be told to be one; absent if it may
 */
public record Ticked(String code, LocalDate day, @Nullable Tick tick, boolean redFlag, boolean slip, boolean waits,
		@Nullable Message refusal) {
}
