package org.fallow.team;

/**
 * In which capacity somebody acts on an athlete's data.
 */
public enum Role {

	/** As one who looks after the athlete, in whatever post. */
	COACH,
	/** As the athlete. */
	ATHLETE

}
