package org.fallow.entry;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * A symptom that is known to be no illness. Up to the noted severity it neither flags nor
 * blocks. It ends after its last day unless it is noted again. Fever and red flags can
 * never be known.
 *
 * @param day first day it holds
 * @param until last day it holds, inclusive
 * @param recorded when it became known
 * @param symptom which
 * @param severity up to which severity it is known
 * @param cause why it is no illness
 * @param word whose word it rests on, a clinician's or a midwife's; absent where none is
 * needed
 */
public record KnownSymptom(LocalDate day, LocalDate until, Recorded recorded, Symptom symptom, Severity severity,
		KnownCause cause, @Nullable String word) implements Fact {

	/**
	 * Refuses what can never be known.
	 * @throws IllegalArgumentException for a red flag, a symptom of fever or free text
	 */
	public KnownSymptom {
		if (symptom.isRedFlag() || symptom.isInOwnWords() || symptom.classAt(severity) == SymptomClass.FEVER) {
			throw new IllegalArgumentException("red flags, fever and free text are never known symptoms");
		}
	}

	/**
	 * One of the cause it usually has, on the word of whoever notes it.
	 * @param day first day it holds
	 * @param until last day it holds, inclusive
	 * @param recorded when it became known
	 * @param symptom which
	 * @param severity up to which severity it is known
	 */
	public KnownSymptom(LocalDate day, LocalDate until, Recorded recorded, Symptom symptom, Severity severity) {
		this(day, until, recorded, symptom, severity, KnownCause.usual(symptom, severity), null);
	}

	/**
	 * Whether a reported symptom is this known one, no worse than noted, and noted before
	 * it was told. How many mornings of the cycle came before is not looked at here.
	 * @param reported the symptom of a morning
	 * @param entry the morning
	 * @return true if it may be passed over
	 */
	public boolean covers(ReportedSymptom reported, MorningEntry entry) {
		return reported.symptom() == this.symptom && reported.severity().compareTo(this.severity) <= 0 && holds(entry)
				&& (this.cause != KnownCause.CYCLE || entry.tags().contains(ContextTag.CYCLE_PHASE));
	}

	/**
	 * Whether it is in force for a morning, whatever is felt.
	 * @param entry the morning
	 * @return true from its first to its last day, for what was told after it was noted
	 */
	public boolean holds(MorningEntry entry) {
		LocalDate date = entry.day();
		return this.cause.allows(this.symptom, this.severity) && !date.isBefore(this.day)
				&& !date.isBefore(this.recorded.on()) && !date.isAfter(this.until)
				&& this.recorded.compareTo(entry.recorded()) <= 0;
	}

}
