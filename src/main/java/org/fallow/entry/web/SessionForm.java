package org.fallow.entry.web;

import java.util.List;

import org.fallow.entry.AfterSession;
import org.jspecify.annotations.Nullable;

/**
 * The session log as typed.
 *
 * @param day the day
 * @param activity run or other
 * @param minutes duration
 * @param rpe session RPE, 0 to 10
 * @param intensity highest done
 * @param after what was noticed
 * @param note words
 * @param requestId this form's sending
 * @param redFlagConfirmed true once red flags were asked again
 */
public record SessionForm(@Nullable String day, @Nullable String activity, @Nullable String minutes,
		@Nullable String rpe, @Nullable String intensity, @Nullable List<String> after, @Nullable String note,
		@Nullable String requestId, @Nullable Boolean redFlagConfirmed) {

	List<AfterSession> noticed() {
		List<String> given = this.after;
		return (given == null) ? List.of()
				: given.stream()
					.flatMap((code) -> Typed.oneOf(AfterSession.class, code).stream())
					.distinct()
					.sorted()
					.toList();
	}

	List<AfterSession> redFlags() {
		return noticed().stream().filter(AfterSession::isRedFlag).toList();
	}

}
