package org.fallow.account.web;

import java.io.IOException;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.http.HttpMethod;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.session.InvalidSessionStrategy;
import org.springframework.security.web.session.SimpleRedirectInvalidSessionStrategy;
import org.springframework.security.web.util.matcher.OrRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;

/**
 * What a browser is told whose session has ended: to sign in again, unless it asks for a
 * page that needs no session, such as the link of a mail.
 */
class LostSession implements InvalidSessionStrategy {

	private static final RequestMatcher OPEN = new OrRequestMatcher(path("/reset/*"), path("/forgotten"));

	private final InvalidSessionStrategy again;

	LostSession(String signIn) {
		this.again = new SimpleRedirectInvalidSessionStrategy(signIn);
	}

	@Override
	public void onInvalidSessionDetected(HttpServletRequest request, HttpServletResponse response)
			throws IOException, ServletException {
		if (OPEN.matches(request)) {
			request.getSession();
			response.sendRedirect(request.getRequestURI());
		}
		else {
			this.again.onInvalidSessionDetected(request, response);
		}
	}

	private static RequestMatcher path(String path) {
		return PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.GET, path);
	}

}
