package org.fallow.board.web;

import java.util.List;

import org.fallow.training.core.ModifiedSession;
import org.fallow.training.core.PartsText;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.Version;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What an athlete runs today, on the first page they see.
 *
 * @param session as programmed
 * @param version what becomes of it
 * @param minutes how long the athlete runs
 * @param instead what the athlete runs, in one line; absent for nothing
 * @param reasons why
 */
public record TodaySession(PlannedSession session, Version version, int minutes, @Nullable String instead,
		List<Message> reasons) {

	static TodaySession of(ModifiedSession modified) {
		PlannedSession instead = modified.instead();
		return new TodaySession(modified.programmed(), modified.version(), modified.minutes(),
				(instead == null) ? null : PartsText.write(instead.parts()), modified.reasons());
	}

}
