package org.fallow.access;

/** What was done with somebody's data. */
public enum TraceAction {

	/** A page that shows it was opened. */
	LOOKED,
	/** Something was added to it; nothing is ever taken away. */
	CHANGED

}
