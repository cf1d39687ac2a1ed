package org.fallow.entry;

/**
 * How the athlete feels this morning: well, able to train, or unwell.
 */
public enum Feels {

	WELL, ABLE, UNWELL

}
