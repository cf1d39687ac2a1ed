package org.fallow.entry;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * Days away as somebody enters them; {@link Absences#save} checks them. They may lie in
 * the future.
 *
 * @param key the absence it corrects; absent for a new one
 * @param day first day away
 * @param until last day away, inclusive; absent while open
 * @param kind injury, holiday or other
 * @param note words
 * @param recordedOn for an import of history only, as with {@link NewMorning}
 */
public record NewAbsence(@Nullable String key, LocalDate day, @Nullable LocalDate until, AbsenceKind kind,
		@Nullable String note, @Nullable LocalDate recordedOn) {
}
