package org.fallow.contact.web;

import java.util.Objects;

import org.jspecify.annotations.Nullable;

/**
 * A message as typed.
 *
 * @param about day of the decision it is about
 * @param body the text
 * @param requestId this form's sending
 */
public record ThreadForm(@Nullable String about, @Nullable String body, @Nullable String requestId) {

	static ThreadForm about(@Nullable String day) {
		return new ThreadForm(day, null, null);
	}

	/**
	 * What was typed.
	 * @return the text, as it came
	 */
	public String text() {
		return Objects.requireNonNullElse(this.body, "");
	}

}
