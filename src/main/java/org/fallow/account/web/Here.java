package org.fallow.account.web;

import org.fallow.access.CurrentPerson;
import org.fallow.account.SignedInPerson;
import org.fallow.team.Squad;
import org.fallow.team.Standing;

import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;

/**
 * What the signed-in person is here now, asked of the database once a request and never
 * kept longer: a post that was ended a second ago opens nothing. Pages read it as
 * {@code @here}.
 */
@Component("here")
class Here {

	private static final Standing NOBODY = new Standing(false, false, false, false);

	private static final String NAME = Here.class.getName();

	private final CurrentPerson current;

	private final Squad squad;

	Here(CurrentPerson current, Squad squad) {
		this.current = current;
		this.squad = squad;
	}

	/**
	 * What the request's person is called.
	 * @return the name, empty when nobody is signed in
	 */
	public String name() {
		Authentication present = SecurityContextHolder.getContext().getAuthentication();
		return (present != null && present.getPrincipal() instanceof SignedInPerson person) ? person.name() : "";
	}

	/**
	 * The standing of the request's person.
	 * @return all false when nobody is signed in
	 */
	public Standing standing() {
		RequestAttributes request = RequestContextHolder.getRequestAttributes();
		if (request != null && request.getAttribute(NAME, RequestAttributes.SCOPE_REQUEST) instanceof Standing known) {
			return known;
		}
		Standing found = this.current.id().map(this.squad::standing).orElse(NOBODY);
		if (request != null) {
			request.setAttribute(NAME, found, RequestAttributes.SCOPE_REQUEST);
		}
		return found;
	}

}
