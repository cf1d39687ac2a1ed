package org.fallow.contact.core;

/**
 * How far a coach has come with a matter. None of it changes a clearance.
 */
public enum MarkState {

	/** The athlete was spoken or written to. */
	CONTACTED,
	/** Something was agreed. */
	AGREED,
	/** Nothing is left to say. */
	DONE

}
