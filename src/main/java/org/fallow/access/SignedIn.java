package org.fallow.access;

/** A signed-in principal: Spring Security's authentication carries one of these. */
public interface SignedIn {

	/**
	 * Whose sign-in it is.
	 * @return the person's id
	 */
	PersonId personId();

}
