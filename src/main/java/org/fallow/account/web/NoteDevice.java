package org.fallow.account.web;

import java.io.IOException;
import java.time.Instant;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import org.fallow.access.SignedIn;
import org.fallow.account.OtherHands;

import org.springframework.http.HttpHeaders;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.AuthenticationSuccessHandler;

/**
 * Notes in a new session since when it is, and what with, for the list of sessions; and
 * what is to be told first.
 */
class NoteDevice implements AuthenticationSuccessHandler {

	static final String SINCE = "fallow.since";

	static final String DEVICE = "fallow.device";

	private final OtherHands hands;

	private final AuthenticationSuccessHandler next;

	NoteDevice(OtherHands hands, AuthenticationSuccessHandler next) {
		this.hands = hands;
		this.next = next;
	}

	@Override
	public void onAuthenticationSuccess(HttpServletRequest request, HttpServletResponse response,
			Authentication authentication) throws IOException, ServletException {
		HttpSession session = request.getSession();
		session.setAttribute(SINCE, Instant.ofEpochMilli(session.getLastAccessedTime()));
		session.setAttribute(DEVICE, Device.of(request.getHeader(HttpHeaders.USER_AGENT)));
		if (authentication.getPrincipal() instanceof SignedIn person) {
			TellFirst.note(this.hands, person.personId(), session);
		}
		this.next.onAuthenticationSuccess(request, response, authentication);
	}

}
