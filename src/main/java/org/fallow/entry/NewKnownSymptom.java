package org.fallow.entry;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * A symptom known to be no illness, as somebody enters it. It holds for
 * {@value KnownSymptom#DAYS} days.
 *
 * @param day first day
 * @param symptom which; never a red flag, never fever
 * @param severity up to which severity
 * @param recordedOn for an import of history only, as with {@link NewMorning}
 */
public record NewKnownSymptom(LocalDate day, Symptom symptom, Severity severity, @Nullable LocalDate recordedOn) {
}
