package org.fallow.illness;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * The mornings of one entry.
 *
 * @param first day of the first; absent if there is none
 * @param last day of the last; absent if there is none
 * @param days on how many days there is one
 */
public record EnteredMornings(@Nullable LocalDate first, @Nullable LocalDate last, int days) {
}
