package org.fallow.account.web;

import java.time.DateTimeException;
import java.time.LocalDate;

import org.fallow.account.Newcomer;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;

/**
 * What the page of an invitation sends.
 *
 * @param name the person's
 * @param username to sign in with
 * @param password never sent back
 * @param birthDate as typed
 * @param agreed ticked or not
 * @param guardian name of the guardian
 * @param guardianRole what the guardian is to the athlete
 */
public record JoinForm(@Nullable String name, @Nullable String username, @Nullable String password,
		@Nullable String birthDate, @Nullable Boolean agreed, @Nullable String guardian,
		@Nullable String guardianRole) {

	static JoinForm of(String name) {
		return new JoinForm(name, null, null, null, null, null, null);
	}

	Newcomer newcomer(BindingResult result) {
		return new Newcomer(PersonForm.text(this.name), PersonForm.text(this.username),
				PasswordForm.typed(this.password), born(result), Boolean.TRUE.equals(this.agreed),
				PersonForm.text(this.guardian), PersonForm.text(this.guardianRole));
	}

	private @Nullable LocalDate born(BindingResult result) {
		String typed = PersonForm.text(this.birthDate);
		try {
			return typed.isEmpty() ? null : LocalDate.parse(typed);
		}
		catch (DateTimeException ex) {
			result.rejectValue("birthDate", "day.unreadable");
			return null;
		}
	}

	@Override
	public String toString() {
		return "JoinForm";
	}

}
