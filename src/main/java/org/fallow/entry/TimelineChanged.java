package org.fallow.entry;

import java.time.LocalDate;

import org.fallow.team.Athlete;

/**
 * Facts about an athlete were added, in the transaction still running, which holds the
 * {@link AthleteLock}. Whoever listens does so in the same transaction: entered but not
 * assessed is the dangerous state.
 *
 * @param athlete whose, as read after the lock was taken
 * @param fromRecordedDay earliest civil day on which one of them became known: decisions
 * before that day stand
 */
public record TimelineChanged(Athlete athlete, LocalDate fromRecordedDay) {
}
