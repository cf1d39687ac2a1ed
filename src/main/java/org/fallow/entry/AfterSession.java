package org.fallow.entry;

/**
 * What an athlete may have noticed during a session or in the day after it; a yes shuts
 * the next gate, a red flag leads to a clinician. After the list for after exercise of
 * the IOC consensus of 2022 (table 7); the selection here is from memory.
 */
public enum AfterSession {

	/** Chest pain, pressure or tightness. */
	CHEST_PAIN(true),
	/** Breathlessness out of proportion to the effort. */
	BREATHLESSNESS(true),
	/** Palpitations or an irregular, racing heart. */
	PALPITATIONS(true),
	/** Fainting, near-fainting or light-headedness. */
	FAINTING(true),
	/** Coughing blood. */
	COUGHING_BLOOD(true),
	/** Confusion. */
	CONFUSION(true),
	/** Urine brown or red, like tea or cola. */
	DARK_URINE(true),
	/** A seizure. */
	SEIZURE(true),
	/** Heart rate unusually high for the effort, or slow to settle. */
	HEART_RATE_HIGH(false),
	/** Far more tired than the session explains. */
	UNUSUAL_FATIGUE(false),
	/** Headache. */
	HEADACHE(false),
	/** Muscle pain beyond what the session explains. */
	MUSCLE_PAIN(false),
	/** Symptoms of the illness came back. */
	SYMPTOMS_RETURNED(false),
	/** Something else. */
	OTHER(false);

	private final boolean redFlag;

	AfterSession(boolean redFlag) {
		this.redFlag = redFlag;
	}

	/**
	 * Whether a yes always leads to a clinician.
	 * @return true for a red flag
	 */
	public boolean isRedFlag() {
		return this.redFlag;
	}

}
