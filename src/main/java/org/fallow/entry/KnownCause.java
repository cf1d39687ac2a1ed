package org.fallow.entry;

import java.util.EnumMap;
import java.util.Map;

/**
 * Why a symptom is known to be no illness, with what may be noted under it.
 */
public enum KnownCause {

	/** Nose, sneezing and a mild cough of an allergy. */
	ALLERGY(false,
			Map.of(Symptom.RUNNY_NOSE, Severity.MODERATE, Symptom.SNEEZING, Severity.MODERATE, Symptom.COUGH,
					Severity.MILD)),
	/** A mild wheeze of asthma. */
	ASTHMA(true, Map.of(Symptom.WHEEZE, Severity.MILD)),
	/** A cough that lingers after an illness. */
	LINGERING_COUGH(true, Map.of(Symptom.COUGH, Severity.MODERATE)),
	/** Nausea or fatigue of pregnancy. */
	PREGNANCY(true, Map.of(Symptom.NAUSEA, Severity.MODERATE, Symptom.FATIGUE, Severity.MODERATE)),
	/** Pain, fatigue or headache of the cycle, on mornings that carry its tag. */
	CYCLE(false, Map.of(Symptom.PERIOD_PAIN, Severity.MODERATE, Symptom.ABDOMINAL_PAIN, Severity.MODERATE,
			Symptom.FATIGUE, Severity.MODERATE, Symptom.SEVERE_HEADACHE, Severity.MODERATE));

	private final boolean onAWord;

	private final Map<Symptom, Severity> most;

	KnownCause(boolean onAWord, Map<Symptom, Severity> most) {
		this.onAWord = onAWord;
		this.most = new EnumMap<>(most);
	}

	/**
	 * Whether it may be noted on a clinician's or a midwife's word only. For asthma and a
	 * lingering cough the text can be read two ways (the safer reading).
	 * @return true if whose word it was has to be told
	 */
	public boolean needsAWord() {
		return this.onAWord;
	}

	/**
	 * Whether a symptom may be noted under this cause.
	 * @param symptom which
	 * @param severity up to which severity
	 * @return false for what can only be an illness
	 */
	public boolean allows(Symptom symptom, Severity severity) {
		Severity worst = this.most.get(symptom);
		return worst != null && severity.compareTo(worst) <= 0;
	}

	/**
	 * The cause a symptom is usually noted under, where a file does not name one; of two
	 * possible ones the one that passes over less.
	 * @param symptom which
	 * @param severity up to which severity
	 * @return the cause; the allergy, which then allows nothing, for any other symptom
	 */
	public static KnownCause usual(Symptom symptom, Severity severity) {
		return switch (symptom) {
			case WHEEZE -> ASTHMA;
			case COUGH -> (severity == Severity.MILD) ? ALLERGY : LINGERING_COUGH;
			case NAUSEA -> PREGNANCY;
			case PERIOD_PAIN, ABDOMINAL_PAIN, FATIGUE, SEVERE_HEADACHE -> CYCLE;
			default -> ALLERGY;
		};
	}

}
