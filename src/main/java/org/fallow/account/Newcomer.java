package org.fallow.account;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * What somebody fills in to accept an invitation.
 *
 * @param name the person's; not looked at for an athlete on file or who is signed in
 * @param username to sign in with; not looked at for who is signed in
 * @param password chosen; not looked at for who is signed in
 * @param birthDate absent where not told, which counts as under 18
 * @param agreed whether the athlete agrees to what the coaches will see
 * @param guardian name of the guardian who agrees; empty for an adult
 * @param guardianRole what the guardian is to the athlete; empty for an adult
 */
public record Newcomer(String name, String username, String password, @Nullable LocalDate birthDate, boolean agreed,
		String guardian, String guardianRole) {

	/** Keeps the password out of logs. */
	@Override
	public String toString() {
		return "Newcomer";
	}

}
