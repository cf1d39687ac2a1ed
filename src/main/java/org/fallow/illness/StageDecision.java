package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.illness.core.DayAssessment.Decision;

/**
 * A change of an episode, with the evidence it was computed from.
 *
 * @param day the day
 * @param number counting from 1 on each day
 * @param decision what changed
 * @param ruleHash the rule set it was decided under
 * @param evidence the whole assessment of the day as JSON: members in a fixed order,
 * decimals with six places
 */
public record StageDecision(LocalDate day, int number, Decision decision, String ruleHash, String evidence) {
}
