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
 * @param cause why it is no illness
 * @param word whose word it rests on; needed for some causes
 * @param recordedOn for an import of history only, as with {@link NewMorning}
 */
public record NewKnownSymptom(LocalDate day, Symptom symptom, Severity severity, KnownCause cause,
		@Nullable String word, @Nullable LocalDate recordedOn) {
}
