package org.fallow.entry;

/**
 * Whether a medicine that lowers fever was taken in the last 24 hours, and why.
 */
public enum FeverMedicine {

	NONE, ILLNESS, OTHER

}
