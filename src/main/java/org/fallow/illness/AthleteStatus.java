package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * How an athlete stands now: what a board reads, one row each.
 *
 * @param athlete whose
 * @param version counted up by every assessment: lock and ETag
 * @param lastEntry day of the latest morning entered; absent before the first
 * @param latest the latest day decided; absent before the first fact
 */
public record AthleteStatus(PersonId athlete, long version, @Nullable LocalDate lastEntry,
		@Nullable AssessedDay latest) {
}
