package org.fallow.training;

import java.time.LocalDate;

/**
 * A coach's word for a race soon after an illness.
 *
 * @param raceOn day of the race
 * @param agreed whether it may be run; false takes an earlier word back
 * @param reason why
 * @param coach name of the coach
 * @param recordedOn civil day it was said on, in the athlete's zone
 */
public record RaceWord(LocalDate raceOn, boolean agreed, String reason, String coach, LocalDate recordedOn) {

	/**
	 * Whether it lets the race be run. A word from before the illness ended says nothing
	 * of what came after it.
	 * @param lastIll the last day ill
	 * @return true if it was agreed after that day
	 */
	boolean counts(LocalDate lastIll) {
		return this.agreed && this.recordedOn.isAfter(lastIll);
	}

}
