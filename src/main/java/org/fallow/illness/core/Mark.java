package org.fallow.illness.core;

/**
 * What a morning was for the return: good ones count, bad ones hold back.
 */
public enum Mark {

	/** Entered, no illness symptom, and quiet where resting heart rate is tracked. */
	GOOD,
	/** An illness symptom, or a resting heart rate that is high or above the line. */
	BAD,
	/** Entered, and neither good nor bad: the day does not count. */
	NEITHER,
	/** No entry. */
	NONE

}
