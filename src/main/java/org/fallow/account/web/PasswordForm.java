package org.fallow.account.web;

import org.jspecify.annotations.Nullable;

/**
 * A change of one's own password, as typed. None of it is ever sent back to the page or
 * written to a log.
 *
 * @param present the password so far
 * @param wanted the new one
 * @param again the new one, typed once more
 */
public record PasswordForm(@Nullable String present, @Nullable String wanted, @Nullable String again) {

	static PasswordForm blank() {
		return new PasswordForm(null, null, null);
	}

	static String typed(@Nullable String password) {
		return (password == null) ? "" : password;
	}

	@Override
	public String toString() {
		return "PasswordForm";
	}

}
