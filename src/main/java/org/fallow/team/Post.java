package org.fallow.team;

/**
 * What a person is charged with in a club or team. A person may hold several.
 */
public enum Post {

	/**
	 * Has the club: its teams and who coaches them. Being the owner shows nobody's
	 * mornings.
	 */
	OWNER,
	/** Leads a team: all its athletes, its rules, its people, its imports. */
	HEAD_COACH,
	/** Looks after the athletes of some of the team's groups. */
	GROUP_COACH,
	/**
	 * Stands in for a coach until a day. A deputy looks and may be stricter; what loosens
	 * is for the coach to record.
	 */
	DEPUTY

}
