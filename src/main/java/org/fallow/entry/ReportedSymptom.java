package org.fallow.entry;

import org.jspecify.annotations.Nullable;

/**
 * One symptom as reported on a morning.
 *
 * @param symptom which
 * @param severity how bad
 * @param text the athlete's words, given for {@link Symptom#OTHER} and
 * {@link Symptom#OTHER_COMPLAINT} only
 */
public record ReportedSymptom(Symptom symptom, Severity severity, @Nullable String text) {

	/**
	 * A listed symptom.
	 * @param symptom which
	 * @param severity how bad
	 * @return the report, without free text
	 */
	public static ReportedSymptom of(Symptom symptom, Severity severity) {
		return new ReportedSymptom(symptom, severity, null);
	}

	/**
	 * Something in the athlete's own words.
	 * @param severity how bad
	 * @param words what was written
	 * @param noIllness whether it was said to belong to no illness
	 * @return a complaint if so, unless the words speak of chest, heart, breath or
	 * fainting; else a symptom below the neck
	 */
	public static ReportedSymptom inOwnWords(Severity severity, String words, boolean noIllness) {
		boolean complaint = noIllness && !FreeWords.speakOfARedFlag(words);
		return new ReportedSymptom(complaint ? Symptom.OTHER_COMPLAINT : Symptom.OTHER, severity, words);
	}

	/**
	 * Where the symptom sits at its severity.
	 * @return the class
	 */
	public SymptomClass symptomClass() {
		return this.symptom.classAt(this.severity);
	}

}
