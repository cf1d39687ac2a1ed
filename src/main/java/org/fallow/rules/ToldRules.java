package org.fallow.rules;

/**
 * How long what athletes tell of themselves stands, and when they are asked.
 *
 * @param silentMornings mornings without an entry, running, from which on it is asked
 * whether the athlete was ill meanwhile
 * @param knownDays days, the first one included, that a known symptom holds unless it is
 * renewed
 * @param cycleMornings mornings running with the tag of the cycle on which its symptoms
 * are passed over; on the next they count
 */
public record ToldRules(int silentMornings, int knownDays, int cycleMornings) {
}
