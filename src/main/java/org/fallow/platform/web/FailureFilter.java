package org.fallow.platform.web;

import java.io.IOException;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Outermost of all filters: answers and logs what nobody else caught, so that the server
 * does not log it with its message, and keeps the route for {@link FailureController}.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class FailureFilter extends OncePerRequestFilter {

	private static final String ROUTE = FailureFilter.class.getName() + ".route";

	/** Looked up late: filters are made before templates are. */
	private final ObjectProvider<BareAnswer> answers;

	FailureFilter(ObjectProvider<BareAnswer> answers) {
		this.answers = answers;
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		try {
			chain.doFilter(request, response);
		}
		catch (Exception | StackOverflowError ex) {
			answer(request, response, ex);
		}
		finally {
			request.setAttribute(ROUTE, request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE));
		}
	}

	private void answer(HttpServletRequest request, HttpServletResponse response, Throwable cause) throws IOException {
		Failure failure = Failure.of(status(cause), request.getMethod(),
				request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE), cause);
		failure.log();
		if (response.isCommitted()) {
			throw new IllegalStateException("cut short after the answer began, see " + failure.id());
		}
		this.answers.getObject().write(failure, request, response);
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

	static @Nullable Object route(HttpServletRequest request) {
		return request.getAttribute(ROUTE);
	}

}
