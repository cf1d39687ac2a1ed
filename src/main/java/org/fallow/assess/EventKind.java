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
	/** A clinician's clearance: arg its ceiling, value its last day. */
	CLEAR,
	/** A coach withdraws the episode. */
	WITHDRAW,
	/** A coach is stricter: arg the ceiling, value the last day. */
	STRICTER,
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
	DEVICE;

	static String words() {
		return EventRow.words(values());
	}

}
