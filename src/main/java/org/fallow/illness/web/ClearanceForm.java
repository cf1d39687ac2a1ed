package org.fallow.illness.web;

import org.jspecify.annotations.Nullable;

/**
 * The form that records a clinician's clearance, as typed.
 *
 * @param who the clinician's name
 * @param role the clinician's role
 * @param day day the clinician spoke
 * @param scope REST, EASY or FULL
 * @param from first day it covers
 * @param until last day it covers
 * @param note the clinician's words
 * @param requestId this form's sending
 */
public record ClearanceForm(@Nullable String who, @Nullable String role, @Nullable String day, @Nullable String scope,
		@Nullable String from, @Nullable String until, @Nullable String note, @Nullable String requestId) {
}
