package org.fallow.entry;

import org.jspecify.annotations.Nullable;

/**
 * One symptom as reported on a morning.
 *
 * @param symptom which
 * @param severity how bad
 * @param text the athlete's words, given for {@link Symptom#OTHER} only
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
	 * Where the symptom sits at its severity.
	 * @return the class
	 */
	public SymptomClass symptomClass() {
		return this.symptom.classAt(this.severity);
	}

}
