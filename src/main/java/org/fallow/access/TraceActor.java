package org.fallow.access;

/**
 * Who looks or changes, and by which right.
 *
 * @param id the person
 * @param name as named at the time, kept because people leave
 * @param post SELF for the athlete, else the post that covers the athlete
 */
public record TraceActor(PersonId id, String name, String post) {

	/** What an athlete is to the own data. */
	public static final String SELF = "SELF";

}
