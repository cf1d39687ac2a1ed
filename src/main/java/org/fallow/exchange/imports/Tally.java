package org.fallow.exchange.imports;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * What came of the rows of one person, each a count.
 *
 * @param read rows dealt with
 * @param stored mornings stored for the first time
 * @param unchanged mornings that were there already
 * @param corrected mornings that corrected an earlier import
 * @param rejected rows refused
 * @param created 1 if the person was added
 * @param matched 1 if the person was found
 * @param firstDay earliest day taken in; absent if none
 * @param lastDay latest day taken in; absent if none
 */
record Tally(int read, int stored, int unchanged, int corrected, int rejected, int created, int matched,
		@Nullable LocalDate firstDay, @Nullable LocalDate lastDay) {
}
