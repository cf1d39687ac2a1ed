package org.fallow.entry;

import org.fallow.team.Athlete;
import org.jspecify.annotations.Nullable;

/**
 * The effort that an athlete is held to on the way back. Whoever knows of returns answers
 * it; the page of the session log asks.
 */
public interface EffortCeilings {

	/**
	 * The ceiling of the athlete's present stage.
	 * @param athlete whose
	 * @return session RPE, CR-10; absent without a return, and where a session is run as
	 * programmed
	 */
	@Nullable Double today(Athlete athlete);

}
