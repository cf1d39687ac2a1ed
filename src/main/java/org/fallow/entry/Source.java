package org.fallow.entry;

/**
 * By which way a fact came in.
 */
public enum Source {

	/** Typed into a page. */
	PAGE,
	/** Read from a file. */
	IMPORT

}
