package org.fallow.access;

/** Which page was looked at, or what kind of fact was added. */
public enum TraceSubject {

	BOARD, ATHLETE_PAGE, CLEARANCE_PAGE, DECISION_PAGE, RULE_TRIAL, MORNING, MORNING_FILE, SESSION, ABSENCE, MEDICINE,
	KNOWN_SYMPTOM, CONDITION, ILLNESS, TRAINING, PLAN, CONTACT, THREAD, MERGE, MERGE_UNDONE

}
