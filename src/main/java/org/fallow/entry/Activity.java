package org.fallow.entry;

/**
 * What kind of session it was; only runs count for the return's gates.
 */
public enum Activity {

	RUN, OTHER

}
