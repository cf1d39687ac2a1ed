package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.rules.Clearance;

/**
 * A coach's decision to be stricter than the rules.
 *
 * @param from first day, never before today
 * @param until last day, inclusive
 * @param ceiling the most the coach allows: REST or EASY_ONLY
 * @param reason why
 */
public record NewStricter(LocalDate from, LocalDate until, Clearance ceiling, String reason) {
}
