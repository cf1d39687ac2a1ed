package org.fallow.assess;

/**
 * What a row of a file of events can be.
 */
enum EventKind {

	/** An illness reported: arg its kind, value its worst severity, 0 to 10. */
	REPORT,
	/** A run: arg a yes of the list for after a session. */
	RUN,
	/** A clinician hold. */
	HOLD,
	/**
	 * A clinician's clearance: arg its ceiling and what it says besides, value its last
	 * day.
	 */
	CLEAR,
	/** A coach withdraws the episode. */
	WITHDRAW,
	/** A coach is stricter: arg the ceiling, value the last day. */
	STRICTER,
	/** A coach lifts a ceiling: arg its ceiling, value its first day. */
	LIFT,
	/** What an athlete said to a coach today: arg able, eating or both. */
	SAID,
	/** A coach lets the episode go on by symptoms alone. */
	SYMPTOMS_ONLY,
	/** A rate-lowering medicine begun. */
	MED_ON,
	/** A rate-lowering medicine stopped. */
	MED_OFF,
	/**
	 * A known symptom: arg its code, after a cause and a blank if need be, value its
	 * severity.
	 */
	KNOWN,
	/** A vaccination, on its day. */
	VACCINATION,
	/** A change about the measuring: arg device, software or place, value the method. */
	DEVICE,
	/**
	 * A tick of the day's morning was a slip: arg its code, value {@code no_coach} where
	 * nobody could ask about a red flag.
	 */
	SLIP,
	/** Measured again lying: arg how, value bpm. */
	AGAIN,
	/** The pulse counted by finger: arg how and the posture, value bpm. */
	COUNT,
	/**
	 * A clinician's own figure: arg the way of measuring and the posture, value bpm, or
	 * empty where it ends.
	 */
	FIGURE,
	/** A coach notes having asked about a red flag told to be a slip. */
	ASKED;

	static String words() {
		return EventRow.words(values());
	}

}
