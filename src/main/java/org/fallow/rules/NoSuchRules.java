package org.fallow.rules;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.ResponseStatus;

/**
 * There is no such rule set or draft, or not for the person who asks; a page answers 404,
 * so that nobody learns what exists.
 */
@ResponseStatus(HttpStatus.NOT_FOUND)
public class NoSuchRules extends RuntimeException {

	/**
	 * No rule set of this name.
	 * @param asked what was asked for
	 */
	public NoSuchRules(Object asked) {
		super("no rules " + asked);
	}

}
