package org.fallow.training;

import java.time.Instant;

import org.fallow.training.core.ProgrammeWeek;
import org.jspecify.annotations.Nullable;

/**
 * A week of a group's programme as it stands.
 *
 * @param week the week; without sessions where nothing was written
 * @param revision counting from 1; 0 where nothing was written
 * @param canGoBack whether there is a change to take back
 * @param by who changed it last; absent where nothing was written
 * @param at when; absent likewise
 */
public record StoredWeek(ProgrammeWeek week, int revision, boolean canGoBack, @Nullable String by,
		@Nullable Instant at) {
}
