package org.fallow.team;

/** On whose word data are kept of somebody who has not agreed here themselves. */
public enum Basis {

	/** The athlete, who is of age, said so to whoever keeps the data. */
	OWN_WORD,
	/** A guardian of an athlete under 18 said so to whoever keeps the data. */
	GUARDIAN_WORD,
	/** The club keeps a record; nobody was asked yet. */
	CLUB_RECORD

}
