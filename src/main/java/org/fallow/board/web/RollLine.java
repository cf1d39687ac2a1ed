package org.fallow.board.web;

import java.util.List;
import java.util.UUID;

import org.fallow.training.core.Version;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * An athlete on the session roll.
 *
 * @param athleteId whose page tells more
 * @param name the athlete's
 * @param version what becomes of the session
 * @param minutes how long the athlete runs
 * @param instead what the athlete runs, in one line; absent for nothing
 * @param reason the first of the reasons; absent as programmed
 * @param ranToday minutes of running logged on the day already; 0 for none
 * @param logged sessions of the day before and of the day, with what was told of them
 */
public record RollLine(UUID athleteId, String name, Version version, int minutes, @Nullable String instead,
		@Nullable Message reason, int ranToday, List<LoggedSession> logged) {

	/** Copies the list. */
	public RollLine {
		logged = List.copyOf(logged);
	}

}
