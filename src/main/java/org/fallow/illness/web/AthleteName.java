package org.fallow.illness.web;

import java.util.UUID;

import org.fallow.team.Athlete;

/**
 * An athlete as a page's head names them.
 *
 * @param id for links
 * @param name for people
 */
record AthleteName(UUID id, String name) {

	static AthleteName of(Athlete athlete) {
		return new AthleteName(athlete.id().value(), athlete.name());
	}

}
