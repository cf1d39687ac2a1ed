package org.fallow.entry;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * A condition begun or ended, as somebody enters it.
 *
 * @param day first day with, or without, it
 * @param kind which
 * @param present true when it began
 * @param recordedOn for an import of history only, as with {@link NewMorning}
 */
public record NewHealthCondition(LocalDate day, HealthCondition.Kind kind, boolean present,
		@Nullable LocalDate recordedOn) {
}
