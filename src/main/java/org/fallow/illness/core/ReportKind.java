package org.fallow.illness.core;

/**
 * What kind of illness is reported.
 */
public enum ReportKind {

	/** Nose and throat only. */
	ABOVE_NECK(false),
	/** Vomiting or diarrhoea. */
	STOMACH(false),
	/** With fever. */
	FEVER(false),
	/** On the chest. */
	CHEST(false),
	/** COVID-19. */
	COVID(false),
	/** Pneumonia: a hold. */
	PNEUMONIA(true),
	/** Glandular fever: a hold. */
	GLANDULAR_FEVER(true),
	/** Known or suspected myocarditis: a hold. */
	MYOCARDITIS(true),
	/** Known or suspected pericarditis: a hold. */
	PERICARDITIS(true),
	/** A stay in hospital: a hold. */
	HOSPITAL(true),
	/** Anything else. */
	OTHER(false);

	private final boolean hold;

	ReportKind(boolean hold) {
		this.hold = hold;
	}

	/**
	 * Whether the report opens a clinician hold.
	 * @return true if only a clinician's clearance leads out
	 */
	public boolean opensHold() {
		return this.hold;
	}

}
