package org.fallow.entry;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * A rate-lowering medicine begun or stopped, as somebody enters it.
 *
 * @param day the first day with, or without, it
 * @param on true when begun
 * @param recordedOn for an import of history only, as with {@link NewMorning}
 */
public record NewMedicineChange(LocalDate day, boolean on, @Nullable LocalDate recordedOn) {
}
