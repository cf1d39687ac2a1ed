package org.fallow.account.web;

import org.jspecify.annotations.Nullable;

/**
 * A person to add, as typed.
 *
 * @param name the person's
 * @param username the address to sign in with
 * @param role athlete or coach
 * @param teamId which team
 * @param groupId which group; empty for none
 * @param birthDate empty when not known
 */
public record PersonForm(@Nullable String name, @Nullable String username, @Nullable String role,
		@Nullable String teamId, @Nullable String groupId, @Nullable String birthDate) {

	static String text(@Nullable String typed) {
		return (typed == null) ? "" : typed.strip();
	}

}
