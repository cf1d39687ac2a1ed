package org.fallow.entry;

import java.time.LocalDate;

/**
 * A vaccination, noted with its day. What it changes about an illness that follows, it
 * changes only if it was noted before the first sick morning's entry.
 *
 * @param day the day of the vaccination
 * @param recorded when it became known
 */
public record Vaccination(LocalDate day, Recorded recorded) implements Fact {
}
