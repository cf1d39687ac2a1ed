package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.entry.Recorded;

/**
 * A clinician hold: Refer from the minute it was recorded, until a clearance recorded
 * later covers the day.
 *
 * @param day the day the cause speaks of
 * @param recorded when it opened
 * @param cause a symptom's, report kind's or after-session code, or {@code BY_HAND}
 * @param resumed whether the episode resumed in ill after a clearance
 */
public record HoldState(LocalDate day, Recorded recorded, String cause, boolean resumed) {

	HoldState asResumed(boolean value) {
		return new HoldState(this.day, this.recorded, this.cause, value);
	}

}
