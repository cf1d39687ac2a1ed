package org.fallow.account.web;

import java.io.IOException;
import java.time.Instant;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;

import org.springframework.http.HttpHeaders;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.AuthenticationSuccessHandler;

/** Notes in a new session since when it is, and what with, for the list of sessions. */
class NoteDevice implements AuthenticationSuccessHandler {

	static final String SINCE = "fallow.since";

	static final String DEVICE = "fallow.device";

	private final AuthenticationSuccessHandler next;

	NoteDevice(AuthenticationSuccessHandler next) {
		this.next = next;
	}

	@Override
	public void onAuthenticationSuccess(HttpServletRequest request, HttpServletResponse response,
			Authentication authentication) throws IOException, ServletException {
		HttpSession session = request.getSession();
		session.setAttribute(SINCE, Instant.ofEpochMilli(session.getLastAccessedTime()));
		session.setAttribute(DEVICE, Device.of(request.getHeader(HttpHeaders.USER_AGENT)));
		this.next.onAuthenticationSuccess(request, response, authentication);
	}

}
