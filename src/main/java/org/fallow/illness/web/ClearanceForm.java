package org.fallow.illness.web;

import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * The form that records a clinician's clearance, as typed.
 *
 * @param who the clinician's name
 * @param by PHYSICIAN or CLINICIAN
 * @param role the clinician's role
 * @param day day the clinician spoke
 * @param examinedOn day a physician examined the athlete
 * @param scope REST, EASY or FULL
 * @param noIllness true if the physician says that it was no illness
 * @param examined codes of the red flags the physician examined
 * @param from first day it covers
 * @param until last day it covers
 * @param note the clinician's words
 * @param requestId this form's sending
 */
public record ClearanceForm(@Nullable String who, @Nullable String by, @Nullable String role, @Nullable String day,
		@Nullable String examinedOn, @Nullable String scope, @Nullable String noIllness,
		@Nullable List<String> examined, @Nullable String from, @Nullable String until, @Nullable String note,
		@Nullable String requestId) {

	static ClearanceForm of(String today, String requestId) {
		return new ClearanceForm(null, null, null, today, null, null, null, null, today, null, null, requestId);
	}

	List<String> named() {
		return (this.examined == null) ? List.of() : this.examined;
	}

	boolean saysNoIllness() {
		return "true".equals(this.noIllness);
	}

}
