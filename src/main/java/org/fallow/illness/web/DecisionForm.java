package org.fallow.illness.web;

import org.jspecify.annotations.Nullable;

/**
 * A coach's decision, as typed; one form type for all kinds.
 *
 * @param ceiling the most allowed, for being stricter
 * @param until last day, for being stricter
 * @param reason why
 * @param who the clinician's name, for a working level
 * @param role the clinician's role, for a working level
 * @param word what the clinician said, for a working level
 * @param requestId this form's sending
 */
public record DecisionForm(@Nullable String ceiling, @Nullable String until, @Nullable String reason,
		@Nullable String who, @Nullable String role, @Nullable String word, @Nullable String requestId) {
}
