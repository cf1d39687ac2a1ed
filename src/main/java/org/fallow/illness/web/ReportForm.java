package org.fallow.illness.web;

import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * The form that reports an illness, as typed.
 *
 * @param onset first day of it
 * @param kind what kind
 * @param worst worst severity so far, 0 to 10
 * @param redFlags red flags ticked
 * @param note words
 * @param requestId this form's sending
 */
public record ReportForm(@Nullable String onset, @Nullable String kind, @Nullable String worst,
		@Nullable List<String> redFlags, @Nullable String note, @Nullable String requestId) {

	List<String> ticked() {
		return (this.redFlags == null) ? List.of() : this.redFlags;
	}

}
