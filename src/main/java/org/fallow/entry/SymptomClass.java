package org.fallow.entry;

/**
 * Where a symptom sits, which decides what follows from it.
 */
public enum SymptomClass {

	/** Nose and throat; a mild cough. */
	ABOVE_THE_NECK,
	/** Chest, and whatever is described in free text. */
	BELOW_THE_NECK,
	/** Vomiting, diarrhoea: below the neck, with a path of their own. */
	STOMACH,
	/** Fatigue, aches, glands: the whole body. */
	WHOLE_BODY,
	/** Fever, or the feeling of it. */
	FEVER,
	/** Loss of smell or taste: alone it does not block. */
	SMELL,
	/** A clinician first. */
	RED_FLAG

}
