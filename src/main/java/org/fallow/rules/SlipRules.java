package org.fallow.rules;

/**
 * When a tick may be told to be a slip, and what follows.
 *
 * @param redFlagMinutes minutes after the first revision with it, both ends included, in
 * which a red flag may be one
 * @param redFlagEveryDays days after one of a red flag without another; the last of them
 * is still too soon
 * @param otherEveryDays the same of all other ticks
 * @param afterDays days after a close, and after a vaccination, without one of a red flag
 * @param entries mornings entered after one of a red flag that stand in for a coach's
 * question where there is no coach
 * @param toldDays days, its own included, on which coaches are told of one
 */
public record SlipRules(int redFlagMinutes, int redFlagEveryDays, int otherEveryDays, int afterDays, int entries,
		int toldDays) {
}
