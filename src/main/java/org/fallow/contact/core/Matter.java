package org.fallow.contact.core;

/**
 * Why somebody needs a word; those that come first are more urgent.
 */
public enum Matter {

	/** A clinician comes first: a hold stands, or the clearance is Refer. */
	REFER,
	/** An episode opened in the last days, and nobody marked it yet. */
	NEW_ILLNESS,
	/** A tick was told to be a slip of the finger in the last days, or waits for that. */
	SLIP,
	/** The return went back, by symptoms or by numbers. */
	STEP_BACK,
	/** A red flag that a physician has examined was ticked today. */
	EXAMINED,
	/** The return takes far longer than its least time. */
	STALLED,
	/** No morning was entered for some days. */
	QUIET,
	/** The baseline of resting heart rate has risen slowly. */
	DRIFT

}
