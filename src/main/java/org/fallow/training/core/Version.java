package org.fallow.training.core;

/**
 * What an athlete does of a programmed session, strictest first.
 */
public enum Version {

	/** Nothing, and a clinician first. */
	CLINICIAN_FIRST,
	/** Nothing. */
	REST,
	/** Not told before today's morning is entered; easy running at most. */
	NOT_ASSESSED,
	/** Easy running at the same time and place. */
	EASY,
	/** Easy running with a few strides, at the same time and place. */
	STRIDES,
	/** The same, but less of it. */
	SHORTENED,
	/** As the programme has it. */
	AS_PROGRAMMED

}
