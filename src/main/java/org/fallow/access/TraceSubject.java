package org.fallow.access;

/** Which page was looked at, or what kind of fact was added. */
public enum TraceSubject {

	BOARD, ATHLETE_PAGE, CLEARANCE_PAGE, DECISION_PAGE, RULE_TRIAL, MORNING, MORNING_FILE, SESSION, ABSENCE, MEDICINE,
	KNOWN_SYMPTOM, CONDITION, VACCINATION, DEVICE, ILLNESS, TRAINING, PLAN, CONTACT, THREAD, MERGE, MERGE_UNDONE,
	/** A link by which a password can be set: made for somebody else, and used. */
	LINK_MADE, LINK_USED,
	/** Other ways in: a password of one's own, a passkey. */
	PASSWORD, PASSKEY,
	/** Who looks after an athlete. */
	POST_GIVEN, POST_ENDED,
	/** The address that a calendar is read by. */
	CALENDAR_MADE, CALENDAR_ENDED

}
