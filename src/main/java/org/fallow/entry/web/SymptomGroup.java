package org.fallow.entry.web;

import java.util.Arrays;
import java.util.List;

import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.entry.SymptomClass;

/**
 * Symptoms as the form groups them.
 *
 * @param code the group
 * @param symptoms in the order of the list
 */
public record SymptomGroup(String code, List<Symptom> symptoms) {

	/** All groups; nausea only for whom it is noted as known. */
	static List<SymptomGroup> all(boolean withNausea) {
		return List.of(group("ABOVE_NECK", SymptomClass.ABOVE_THE_NECK),
				group("BELOW_NECK", withNausea, SymptomClass.BELOW_THE_NECK, SymptomClass.STOMACH),
				group("WHOLE_BODY", SymptomClass.WHOLE_BODY, SymptomClass.FEVER),
				group("OTHER_SYMPTOMS", SymptomClass.SMELL), group("COMPLAINTS", SymptomClass.COMPLAINT));
	}

	private static SymptomGroup group(String code, SymptomClass... classes) {
		return group(code, false, classes);
	}

	private static SymptomGroup group(String code, boolean withNausea, SymptomClass... classes) {
		return new SymptomGroup(code,
				Arrays.stream(Symptom.values())
					.filter((symptom) -> !symptom.isInOwnWords() && (withNausea || symptom != Symptom.NAUSEA))
					.filter((symptom) -> List.of(classes).contains(symptom.classAt(Severity.MILD)))
					.toList());
	}

}
