package org.fallow.rules;

/**
 * How long somebody's word stands.
 *
 * @param examinedDays days, the first one included, on which a red flag that a physician
 * examined is passed over
 * @param toldByAthleteDays days, the first one included, of what an athlete tells of a
 * clearance where nobody can confirm it
 * @param ceilingDays days after today on which a coach's ceiling ends at the latest
 */
public record WordRules(int examinedDays, int toldByAthleteDays, int ceilingDays) {
}
