package org.fallow.platform.web;

import java.io.IOException;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.jspecify.annotations.Nullable;

import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Outermost of all filters: catches what nobody else did, so that the server does not log
 * it with its message, and keeps the route for {@link FailureController}.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class FailureFilter extends OncePerRequestFilter {

	private static final String CAUSE = FailureFilter.class.getName() + ".cause";

	private static final String ROUTE = FailureFilter.class.getName() + ".route";

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		try {
			chain.doFilter(request, response);
		}
		catch (Exception | StackOverflowError ex) {
			request.setAttribute(CAUSE, ex);
			answer(request, response, ex);
		}
		finally {
			request.setAttribute(ROUTE, request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE));
		}
	}

	private static void answer(HttpServletRequest request, HttpServletResponse response, Throwable cause)
			throws IOException {
		int status = status(cause);
		if (!response.isCommitted()) {
			response.sendError(status);
			return;
		}
		Failure failure = Failure.of(status, request.getMethod(),
				request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE), cause);
		failure.log();
		throw new IllegalStateException("cut short after the answer began, see " + failure.id());
	}

	/** A request that the server could not read says itself what is wrong with it. */
	private static int status(Throwable cause) {
		for (Throwable one = cause; one != null; one = one.getCause()) {
			if (one instanceof InvalidParameterException unreadable) {
				return unreadable.getErrorCode();
			}
		}
		return HttpStatus.INTERNAL_SERVER_ERROR.value();
	}

	static @Nullable Throwable cause(HttpServletRequest request) {
		return (Throwable) request.getAttribute(CAUSE);
	}

	static @Nullable Object route(HttpServletRequest request) {
		return request.getAttribute(ROUTE);
	}

}
