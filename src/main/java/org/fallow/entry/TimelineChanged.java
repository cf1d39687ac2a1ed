package org.fallow.entry;

import java.time.LocalDate;

import org.fallow.access.PersonId;

/**
 * Facts about an athlete were added, in the transaction still running. Whoever listens
 * does so in the same transaction: entered but not assessed is the dangerous state.
 *
 * @param athlete whose
 * @param fromRecordedDay earliest civil day on which one of them became known: decisions
 * before that day stand
 */
public record TimelineChanged(PersonId athlete, LocalDate fromRecordedDay) {
}
