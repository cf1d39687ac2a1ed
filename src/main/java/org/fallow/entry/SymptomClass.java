package org.fallow.entry;

/**
 * Where a symptom sits, which decides what follows from it.
 */
public enum SymptomClass {

	/** Nose and throat, mild or moderate; a mild cough. */
	ABOVE_THE_NECK,
	/** Chest, severe nose and throat, and free text that may belong to an illness. */
	BELOW_THE_NECK,
	/** Vomiting, diarrhoea: below the neck, with a path of their own. */
	STOMACH,
	/** Fatigue, aches, glands: the whole body. */
	WHOLE_BODY,
	/** Fever, or the feeling of it. */
	FEVER,
	/** Loss of smell or taste: alone it does not block. */
	SMELL,
	/** A complaint that is no illness symptom: of the period, of a limb, in own words. */
	COMPLAINT,
	/** A clinician first. */
	RED_FLAG

}
