package org.fallow.rules;

/**
 * How hard the hardest part of a session was, in the trade's words, easiest first.
 */
public enum Intensity {

	REST, EASY, STRIDES, STEADY, RACE_PACE, THRESHOLD, VO2MAX, ANAEROBIC

}
