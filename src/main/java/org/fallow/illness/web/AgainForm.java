package org.fallow.illness.web;

import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * What is measured again, or felt, as typed.
 *
 * @param day the morning
 * @param kind RESTED or COUNTED
 * @param method how it was taken
 * @param posture how the athlete was placed
 * @param rhr resting heart rate after lying, bpm
 * @param beats beats counted by finger over the time that the method names
 * @param redFlags codes of the red flags ticked
 * @param requestId this form's sending
 */
public record AgainForm(@Nullable String day, @Nullable String kind, @Nullable String method, @Nullable String posture,
		@Nullable String rhr, @Nullable String beats, @Nullable List<String> redFlags, @Nullable String requestId) {

	static AgainForm empty() {
		return new AgainForm(null, null, null, null, null, null, null, null);
	}

	List<String> ticked() {
		return (this.redFlags == null) ? List.of() : this.redFlags;
	}

}
