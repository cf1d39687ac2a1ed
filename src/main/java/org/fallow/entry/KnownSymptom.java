package org.fallow.entry;

import java.time.LocalDate;

/**
 * A symptom that is known to be no illness (an allergy, asthma; a lingering cough on a
 * clinician's word). Up to the noted severity it neither flags nor blocks. It ends after
 * its last day unless it is noted again. Fever and red flags can never be known.
 *
 * @param day first day it holds
 * @param until last day it holds, inclusive
 * @param recorded when it became known
 * @param symptom which
 * @param severity up to which severity it is known
 */
public record KnownSymptom(LocalDate day, LocalDate until, Recorded recorded, Symptom symptom,
		Severity severity) implements Fact {

	/** Days a known symptom holds unless it is renewed. */
	public static final int DAYS = 30;

	/**
	 * Refuses what can never be known.
	 * @throws IllegalArgumentException for a red flag or a symptom of fever
	 */
	public KnownSymptom {
		if (symptom.isRedFlag() || symptom == Symptom.OTHER || symptom.classAt(severity) == SymptomClass.FEVER) {
			throw new IllegalArgumentException("red flags, fever and free text are never known symptoms");
		}
	}

	/**
	 * Whether a reported symptom is this known one, no worse than noted.
	 * @param reported the symptom of a morning
	 * @param date the morning's day
	 * @return true if it is to be passed over
	 */
	public boolean covers(ReportedSymptom reported, LocalDate date) {
		return reported.symptom() == this.symptom && reported.severity().compareTo(this.severity) <= 0
				&& !date.isBefore(this.day) && !date.isBefore(this.recorded.on()) && !date.isAfter(this.until);
	}

}
