package org.fallow.training.web;

import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;

/**
 * A share of a session or a week as pages show it.
 *
 * @param intensity how hard
 * @param minutes how long, a begun minute counted
 */
public record PartView(Intensity intensity, int minutes) {

	/** Shares of what is run at each intensity. */
	static java.util.List<PartView> of(java.util.Map<Intensity, Integer> seconds) {
		return seconds.entrySet()
			.stream()
			.map((entry) -> new PartView(entry.getKey(), (entry.getValue() + 59) / 60))
			.toList();
	}

	/** The line of a session's parts; absent for nothing. */
	static @Nullable String line(org.fallow.training.core.@Nullable PlannedSession session) {
		return (session == null) ? null : org.fallow.training.core.PartsText.write(session.parts());
	}

}
