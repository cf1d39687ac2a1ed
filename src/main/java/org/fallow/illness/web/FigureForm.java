package org.fallow.illness.web;

import org.jspecify.annotations.Nullable;

/**
 * The form for a clinician's own figure for a person, as typed.
 *
 * @param method how the readings are taken
 * @param posture how the athlete is placed
 * @param bpm from here on they are too fast at rest
 * @param who the clinician's name
 * @param role the clinician's role
 * @param spokenOn day the clinician said so
 * @param note the clinician's words
 * @param reason why a figure ends
 * @param requestId this form's sending
 */
public record FigureForm(@Nullable String method, @Nullable String posture, @Nullable String bpm, @Nullable String who,
		@Nullable String role, @Nullable String spokenOn, @Nullable String note, @Nullable String reason,
		@Nullable String requestId) {

	static FigureForm of(String today, String requestId) {
		return new FigureForm(null, "LYING", null, null, null, today, null, null, requestId);
	}

}
