package org.fallow.team;

/**
 * What a person is in a team.
 */
public enum Role {

	/** Looks after the team's athletes. */
	COACH,
	/** Trains in the team; a person is the athlete of one team at most, the home team. */
	ATHLETE

}
