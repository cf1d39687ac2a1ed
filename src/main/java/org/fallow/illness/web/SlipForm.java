package org.fallow.illness.web;

import org.jspecify.annotations.Nullable;

/**
 * A tick told to be a slip, as sent.
 *
 * @param day the day of the entry or session
 * @param tick code of the symptom, or of what was noticed after the session
 * @param session key of the session; empty for the morning entry
 * @param requestId this form's sending
 */
public record SlipForm(@Nullable String day, @Nullable String tick, @Nullable String session,
		@Nullable String requestId) {
}
