package org.fallow.account.web;

import java.io.IOException;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.session.InvalidSessionStrategy;
import org.springframework.security.web.session.SimpleRedirectInvalidSessionStrategy;
import org.springframework.security.web.util.matcher.OrRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;

/**
 * What a browser is told whose session has ended: to sign in again, unless it asks for a
 * page that needs no session, such as the link of a mail. A request for a part of a page
 * must not get the sign-in page for an answer, which would be shown within the old one:
 * it is told to leave the page.
 */
class LostSession implements InvalidSessionStrategy {

	private static final RequestMatcher OPEN = new OrRequestMatcher(path("/reset/*"), path("/forgotten"));

	/** Header of a request for a part of a page. */
	static final String PART = "HX-Request";

	private static final String LEAVE = "HX-Redirect";

	private final String signIn;

	private final InvalidSessionStrategy again;

	LostSession(String signIn) {
		this.signIn = signIn;
		this.again = new SimpleRedirectInvalidSessionStrategy(signIn);
	}

	@Override
	public void onInvalidSessionDetected(HttpServletRequest request, HttpServletResponse response)
			throws IOException, ServletException {
		if (OPEN.matches(request)) {
			request.getSession();
			response.sendRedirect(request.getRequestURI());
		}
		else if (request.getHeader(PART) != null) {
			leave(request, response, this.signIn);
		}
		else {
			this.again.onInvalidSessionDetected(request, response);
		}
	}

	/** Answers a request for a part of a page of somebody who is not signed in. */
	static void leave(HttpServletRequest request, HttpServletResponse response, String signIn) {
		response.setHeader(LEAVE, request.getContextPath() + signIn);
		response.setStatus(HttpStatus.UNAUTHORIZED.value());
	}

	private static RequestMatcher path(String path) {
		return PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.GET, path);
	}

}
