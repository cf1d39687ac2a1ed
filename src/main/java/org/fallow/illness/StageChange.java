package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.access.PersonId;
import org.fallow.illness.core.DayAssessment.Decision;

/**
 * A change of an athlete's episode, without its evidence.
 *
 * @param athlete whose
 * @param day the day
 * @param decision what changed
 */
public record StageChange(PersonId athlete, LocalDate day, Decision decision) {
}
