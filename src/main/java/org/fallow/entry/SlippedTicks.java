package org.fallow.entry;

import java.time.LocalDate;
import java.util.Set;

import org.fallow.team.Athlete;
import org.jspecify.annotations.Nullable;

/**
 * Ticks that were told to be slips. Whoever keeps them answers it; the forms ask, so that
 * a correction does not tick them again.
 */
public interface SlippedTicks {

	/**
	 * What was told to be a slip and not ticked again since.
	 * @param athlete whose
	 * @param day the day of the entry or session
	 * @param session key of the session; absent for the morning entry
	 * @return codes of symptoms, or of what was noticed after the session
	 */
	Set<String> of(Athlete athlete, LocalDate day, @Nullable String session);

}
