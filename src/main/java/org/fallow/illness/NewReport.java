package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.illness.core.ReportKind;
import org.jspecify.annotations.Nullable;

/**
 * An illness as somebody reports it.
 *
 * @param onset first day of it
 * @param kind what kind
 * @param worst worst severity so far, 0 to 10; absent when not stated
 * @param note words
 * @param recordedOn for an import of history only, as with mornings
 */
public record NewReport(LocalDate onset, ReportKind kind, @Nullable Integer worst, @Nullable String note,
		@Nullable LocalDate recordedOn) {
}
