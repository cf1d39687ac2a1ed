package org.fallow.entry;

import org.fallow.team.Athlete;

/**
 * What a morning's entry asks once it is saved. Whoever assesses it answers.
 */
public interface AfterSaving {

	/**
	 * Whether today's entry asks anything: to measure again, to count the pulse, whether
	 * anything aches or feels off.
	 * @param athlete whose
	 * @return true if the athlete is shown the page that asks
	 */
	boolean asks(Athlete athlete);

}
