package org.fallow.entry;

/**
 * What else may explain a reading; a tag annotates a flag and never silences one.
 */
public enum ContextTag {

	ALCOHOL, SHORT_SLEEP, TRAVEL, HEAT, ALTITUDE, CYCLE_PHASE, VACCINATION, HARD_SESSION, RACE, LATE_MEAL

}
