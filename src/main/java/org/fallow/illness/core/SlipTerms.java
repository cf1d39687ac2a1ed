package org.fallow.illness.core;

/**
 * Under which terms a slip works.
 */
public enum SlipTerms {

	/** At once: a tick that is no red flag, outside an episode. */
	AT_ONCE,
	/** Only if a coach accepts it on the same day: in an episode open before the tick. */
	IF_ACCEPTED,
	/** At once, but easy only until a covering coach notes having asked: a red flag. */
	UNTIL_ASKED,
	/** The same where no coach covers the athlete: until three more entries. */
	UNTIL_ENTRIES;

	/**
	 * Whether it is that of a red flag.
	 * @return true where easy only stands on after the day
	 */
	public boolean isOfARedFlag() {
		return this == UNTIL_ASKED || this == UNTIL_ENTRIES;
	}

}
