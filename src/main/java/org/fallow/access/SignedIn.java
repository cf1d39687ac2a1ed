package org.fallow.access;

import java.util.Optional;

/** A signed-in principal: Spring Security's authentication carries one of these. */
public interface SignedIn {

	/**
	 * Whose sign-in it is.
	 * @return the person's id
	 */
	PersonId personId();

	/**
	 * Who had made the link by which the password of this sign-in had been set: somebody
	 * else may have used it, so the trace says so with whatever is entered.
	 * @return the maker's name; empty for a sign-in by what only the person has
	 */
	default Optional<String> linkBy() {
		return Optional.empty();
	}

}
