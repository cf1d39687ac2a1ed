package org.fallow.platform;

import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.access.SignedIn;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;

/**
 * Signs a test's own thread in.
 */
public final class As {

	private As() {
	}

	/**
	 * Does what follows as a person, until {@link #nobody()}; every test ends as nobody.
	 * @param person who
	 */
	public static void person(PersonId person) {
		SignedIn principal = () -> person;
		SecurityContextHolder.getContext()
			.setAuthentication(new TestingAuthenticationToken(principal, null, List.of()));
	}

	/** Does what follows as nobody. */
	public static void nobody() {
		SecurityContextHolder.clearContext();
	}

}
