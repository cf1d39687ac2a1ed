package org.fallow.illness.core;

/**
 * A clinician's or guardian's word that a coach's ceiling, or its lifting, names.
 *
 * @param by whose word
 * @param who the name
 */
public record Spoken(By by, String who) {

	/** Whose word. */
	public enum By {

		/** A clinician. */
		CLINICIAN,
		/** A guardian. */
		GUARDIAN

	}

}
