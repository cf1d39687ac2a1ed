package org.fallow.entry;

/**
 * The symptoms an athlete can tick, after the pre-exercise list of the IOC consensus of
 * 2022 (Schwellnus, BJSM 56:1066, table 6) and the cardiopulmonary red flags of the ACC
 * (Gluckman, JACC 79:1717, figure 9).
 */
public enum Symptom {

	/** Runny or blocked nose. */
	RUNNY_NOSE(SymptomClass.ABOVE_THE_NECK),
	/** Sneezing. */
	SNEEZING(SymptomClass.ABOVE_THE_NECK),
	/** Sore throat. */
	SORE_THROAT(SymptomClass.ABOVE_THE_NECK),
	/** Cough: above the neck while mild, below it from moderate on. */
	COUGH(SymptomClass.ABOVE_THE_NECK),
	/** Wheeze, or chest tightness on coughing. */
	WHEEZE(SymptomClass.BELOW_THE_NECK),
	/** Vomiting. */
	VOMITING(SymptomClass.STOMACH),
	/** Diarrhoea. */
	DIARRHOEA(SymptomClass.STOMACH),
	/** Nausea of a pregnancy; else it is told in own words. */
	NAUSEA(SymptomClass.BELOW_THE_NECK),
	/** Persistent abdominal pain. */
	ABDOMINAL_PAIN(SymptomClass.BELOW_THE_NECK),
	/** A wound that spreads, is hot or weeps. */
	WOUND(SymptomClass.BELOW_THE_NECK),
	/** A swollen, painful calf. */
	SWOLLEN_CALF(SymptomClass.BELOW_THE_NECK),
	/** Bleeding in pregnancy. */
	PREGNANCY_BLEEDING(SymptomClass.BELOW_THE_NECK),
	/** Excessive fatigue. */
	FATIGUE(SymptomClass.WHOLE_BODY),
	/** General muscle aches that do not come from training. */
	MUSCLE_ACHES(SymptomClass.WHOLE_BODY),
	/** Severe headache. */
	SEVERE_HEADACHE(SymptomClass.WHOLE_BODY),
	/** Swollen glands. */
	SWOLLEN_GLANDS(SymptomClass.WHOLE_BODY),
	/** Feeling too unwell to exercise. */
	TOO_UNWELL(SymptomClass.WHOLE_BODY),
	/** Shivering. */
	SHIVERING(SymptomClass.FEVER),
	/** Feeling feverish. */
	FEVERISH(SymptomClass.FEVER),
	/** Loss of smell or taste. */
	SMELL_LOSS(SymptomClass.SMELL),
	/** Period pain: a complaint. */
	PERIOD_PAIN(SymptomClass.COMPLAINT),
	/** Pain of a limb, a blister or a graze: a complaint. */
	LIMB_PAIN(SymptomClass.COMPLAINT),
	/** In the athlete's own words, and said to belong to no illness: a complaint. */
	OTHER_COMPLAINT(SymptomClass.COMPLAINT),
	/** Chest pain, pressure or tightness. */
	CHEST_PAIN(SymptomClass.RED_FLAG),
	/** Breathlessness out of proportion to the effort. */
	BREATHLESSNESS(SymptomClass.RED_FLAG),
	/** Palpitations, or a racing heart at rest. */
	PALPITATIONS(SymptomClass.RED_FLAG),
	/** Fainting, near-fainting, or collapse in exercise. */
	FAINTING(SymptomClass.RED_FLAG),
	/** Coughing blood. */
	COUGHING_BLOOD(SymptomClass.RED_FLAG),
	/** Confusion. */
	CONFUSION(SymptomClass.RED_FLAG),
	/** Urine brown or red, like tea or cola. */
	DARK_URINE(SymptomClass.RED_FLAG),
	/** A seizure. */
	SEIZURE(SymptomClass.RED_FLAG),
	/** A stiff neck with fever. */
	STIFF_NECK(SymptomClass.RED_FLAG),
	/**
	 * Anything else, in the athlete's own words, that belongs to an illness or may do so:
	 * counted as below the neck.
	 */
	OTHER(SymptomClass.BELOW_THE_NECK);

	private final SymptomClass usualClass;

	Symptom(SymptomClass usualClass) {
		this.usualClass = usualClass;
	}

	/**
	 * Where the symptom sits at this severity.
	 * @param severity how bad it is
	 * @return the class: nose and throat are below the neck where they are severe, a
	 * cough from moderate on
	 */
	public SymptomClass classAt(Severity severity) {
		Severity mostAbove = (this == COUGH) ? Severity.MILD : Severity.MODERATE;
		if (this.usualClass == SymptomClass.ABOVE_THE_NECK && severity.compareTo(mostAbove) > 0) {
			return SymptomClass.BELOW_THE_NECK;
		}
		return this.usualClass;
	}

	/**
	 * Whether it is told in the athlete's own words.
	 * @return true for a symptom or a complaint that is not on the list
	 */
	public boolean isInOwnWords() {
		return this == OTHER || this == OTHER_COMPLAINT;
	}

	/**
	 * Whether it is a complaint, which is no symptom of illness.
	 * @return true for a complaint
	 */
	public boolean isComplaint() {
		return this.usualClass == SymptomClass.COMPLAINT;
	}

	/**
	 * Whether a clinician is advised for the symptom alone, though it is no red flag.
	 * @return true for a spreading wound, a swollen calf and bleeding in pregnancy
	 */
	public boolean needsAdvice() {
		return this == WOUND || this == SWOLLEN_CALF || this == PREGNANCY_BLEEDING;
	}

	/**
	 * Whether the symptom always leads to a clinician.
	 * @return true for a red flag
	 */
	public boolean isRedFlag() {
		return this.usualClass == SymptomClass.RED_FLAG;
	}

	/**
	 * Whether the symptom is one of the chest, for the length of chest symptoms.
	 * @param severity how bad it is
	 * @return true for wheeze and for a cough from moderate on
	 */
	public boolean isOfTheChest(Severity severity) {
		return this == WHEEZE || (this == COUGH && severity != Severity.MILD);
	}

}
