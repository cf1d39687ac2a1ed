package org.fallow.training.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A coach's word for a race, as typed.
 *
 * @param raceOn day of the race
 * @param agreed {@code true}, or else it takes an earlier word back
 * @param raceReason why
 * @param requestId this form's sending
 */
public record RaceWordForm(@Nullable String raceOn, @Nullable String agreed, @Nullable String raceReason,
		@Nullable String requestId) {

	@Nullable LocalDate day() {
		try {
			return LocalDate.parse(String.valueOf(this.raceOn));
		}
		catch (DateTimeException ex) {
			return null;
		}
	}

	boolean agrees() {
		return "true".equals(this.agreed);
	}

	String reason() {
		return Objects.requireNonNullElse(this.raceReason, "").strip();
	}

	UUID request() {
		return StatementForm.request(this.requestId);
	}

}
