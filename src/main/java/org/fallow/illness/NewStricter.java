package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.illness.core.Spoken;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * A coach's decision to be stricter than the rules.
 *
 * @param from first day, never before today
 * @param until last day, inclusive; at most 60 days after today
 * @param ceiling the most the coach allows: REST or EASY_ONLY
 * @param reason why
 * @param word the clinician's or guardian's word it names; absent where it is the coach's
 * own
 */
public record NewStricter(LocalDate from, LocalDate until, Clearance ceiling, String reason, @Nullable Spoken word) {

	/**
	 * A ceiling that is the coach's own.
	 * @param from first day
	 * @param until last day, inclusive
	 * @param ceiling the most the coach allows
	 * @param reason why
	 */
	public NewStricter(LocalDate from, LocalDate until, Clearance ceiling, String reason) {
		this(from, until, ceiling, reason, null);
	}

}
