package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.entry.Recorded;
import org.fallow.illness.core.ClinicianWord;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * A clinician's clearance as a coach records it.
 *
 * @param from first day it covers, never before today
 * @param until last day it covers, inclusive; absent when open
 * @param ceiling the most the clinician allows: REST, EASY_ONLY or FULL_TRAINING
 * @param who the clinician's name
 * @param role the clinician's role
 * @param note the clinician's words
 * @param word whose word it is, and what it says besides
 */
public record NewClearance(LocalDate from, @Nullable LocalDate until, Clearance ceiling, String who, String role,
		@Nullable String note, ClinicianWord word) {

	/**
	 * A clearance that says nothing besides its ceiling.
	 * @param from first day it covers
	 * @param until last day it covers, inclusive; absent when open
	 * @param ceiling the most the clinician allows
	 * @param who the clinician's name
	 * @param role the clinician's role
	 * @param note the clinician's words
	 */
	public NewClearance(LocalDate from, @Nullable LocalDate until, Clearance ceiling, String who, String role,
			@Nullable String note) {
		this(from, until, ceiling, who, role, note, ClinicianWord.PLAIN);
	}

	IllnessEvent.Cleared event(Recorded recorded) {
		return new IllnessEvent.Cleared(this.from, this.until, recorded, this.ceiling, this.who, this.role, this.note,
				this.word);
	}

}
