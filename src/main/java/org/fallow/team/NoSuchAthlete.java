package org.fallow.team;

import org.fallow.access.PersonId;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.ResponseStatus;

/**
 * There is no athlete of this id; a page answers 404, so that nobody learns who exists.
 */
@ResponseStatus(HttpStatus.NOT_FOUND)
public class NoSuchAthlete extends RuntimeException {

	/**
	 * No athlete of this id.
	 * @param id the id asked for
	 */
	public NoSuchAthlete(PersonId id) {
		super("no athlete " + id);
	}

}
