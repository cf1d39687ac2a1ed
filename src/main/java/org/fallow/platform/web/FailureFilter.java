package org.fallow.platform.web;

import java.io.IOException;
import java.util.Optional;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.fallow.platform.CommitsOfRequest;
import org.fallow.platform.DatabaseState;
import org.fallow.platform.LostDatabase;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

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
 * While the database is known to be away it answers at once.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class FailureFilter extends OncePerRequestFilter {

	private static final Logger log = LoggerFactory.getLogger(FailureFilter.class);

	private static final String ROUTE = FailureFilter.class.getName() + ".route";

	/** Looked up late: filters are made before templates are. */
	private final ObjectProvider<BareAnswer> answers;

	private final DatabaseState database;

	FailureFilter(ObjectProvider<BareAnswer> answers, DatabaseState database) {
		this.answers = answers;
		this.database = database;
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		boolean anybody = WithoutPerson.suits(request);
		if (!anybody && this.database.away().isPresent()) {
			answer(request, response,
					Failure.of(HttpStatus.SERVICE_UNAVAILABLE.value(), request.getMethod(), null, null));
			return;
		}
		try {
			chain.doFilter(anybody ? new WithoutPerson(request) : request, response);
		}
		catch (Exception | StackOverflowError ex) {
			answer(request, response, failure(request, ex));
		}
		finally {
			request.setAttribute(ROUTE, request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE));
		}
	}

	private Failure failure(HttpServletRequest request, Throwable cause) {
		Optional<LostDatabase> lost = LostDatabase.in(cause);
		if (lost.equals(Optional.of(LostDatabase.FULL))) {
			this.database.refusedForWantOfRoom();
		}
		Failure failure = Failure.of(lost.map(FailureFilter::status).orElseGet(() -> status(cause)),
				request.getMethod(), request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE), cause);
		boolean doubtful = lost.equals(Optional.of(LostDatabase.UNSURE))
				|| (lost.isPresent() && CommitsOfRequest.begun(request));
		return doubtful ? failure.inDoubt() : failure.after(request);
	}

	private void answer(HttpServletRequest request, HttpServletResponse response, Failure failure) throws IOException {
		failure.log();
		if (response.isCommitted() && HttpStatus.valueOf(response.getStatus()).is3xxRedirection()) {
			// the work is done and the answer whole; all that failed is to keep the
			// session
			return;
		}
		if (response.isCommitted()) {
			log.error("cut short after the answer began, see {}", failure.id());
			throw new IllegalStateException("cut short after the answer began, see " + failure.id());
		}
		this.answers.getObject().write(failure, request, response);
	}

	private static int status(LostDatabase lost) {
		return ((lost == LostDatabase.FULL) ? HttpStatus.INSUFFICIENT_STORAGE : HttpStatus.SERVICE_UNAVAILABLE).value();
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
