package org.fallow.platform.web;

import java.net.URI;
import java.util.Arrays;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import jakarta.servlet.http.HttpServletRequest;
import org.fallow.platform.CommitsOfRequest;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;

/**
 * A request that was not answered as asked. Whoever asked sees the id, and so does the
 * log; nothing here says who asked or for whom.
 *
 * @param id what a person quotes and an operator looks for
 * @param status what is answered
 * @param method how it was asked, one of HTTP's own words
 * @param route the pattern of the address, such as {@code /athletes/{id}}; never the
 * address itself
 * @param cause why; absent when a rule refused without an exception
 * @param doubtful whether what was sent may have been stored all the same
 */
record Failure(UUID id, HttpStatus status, String method, String route, @Nullable Throwable cause, boolean doubtful) {

	/** The route of a request that was refused before any page was looked for. */
	static final String NO_ROUTE = "no route";

	private static final Logger log = LoggerFactory.getLogger(Failure.class);

	/** What sends nothing that could be stored. */
	private static final Set<String> ASKING = Set.of("GET", "HEAD", "OPTIONS", "TRACE");

	private static final Set<String> METHODS = Arrays.stream(HttpMethod.values())
		.map(HttpMethod::name)
		.collect(Collectors.toUnmodifiableSet());

	/** The failures of the database, after which the same may be sent again. */
	static final Set<HttpStatus> LOST = Set.of(HttpStatus.SERVICE_UNAVAILABLE, HttpStatus.INSUFFICIENT_STORAGE);

	/** The statuses that have sentences of their own; others borrow their class's. */
	private static final Set<Integer> TOLD = Set.of(400, 403, 404, 405, 409, 413, 415, 429, 500, 503, 507);

	static Failure of(int status, String method, @Nullable Object route, @Nullable Throwable cause) {
		HttpStatus known = HttpStatus.resolve(status);
		return new Failure(UUID.randomUUID(), (known != null) ? known : HttpStatus.INTERNAL_SERVER_ERROR,
				METHODS.contains(method) ? method : "OTHER", (route instanceof String text) ? text : NO_ROUTE, cause,
				false);
	}

	/** The same, of which nobody can say whether what was sent is stored. */
	Failure inDoubt() {
		return new Failure(this.id, this.status, this.method, this.route, this.cause, true);
	}

	/**
	 * The same, in doubt if it is a fault that came after something was stored. What a
	 * failed transaction wrote is known to be gone.
	 */
	Failure after(HttpServletRequest request) {
		boolean sent = !ASKING.contains(this.method);
		return (sent && this.status.is5xxServerError() && CommitsOfRequest.done(request)) ? inDoubt() : this;
	}

	/**
	 * Under what the sentences stand, {@code error.404.title} for example: mostly the
	 * status.
	 */
	String told() {
		if (this.doubtful) {
			return LOST.contains(this.status) ? "unsure" : "stored";
		}
		int code = this.status.value();
		return Integer.toString(TOLD.contains(code) ? code : this.status.is4xxClientError() ? 400 : 500);
	}

	URI instance() {
		return URI.create("urn:uuid:" + this.id);
	}

	/**
	 * One line; with where it happened if the fault is Fallow's own.
	 */
	void log() {
		if (this.status.is5xxServerError()) {
			log.error("{} answered {} to {} {}{}", this.id, this.status.value(), this.method, this.route, trace());
		}
		else {
			log.info("{} answered {} to {} {}{}", this.id, this.status.value(), this.method, this.route, kind());
		}
	}

	private String trace() {
		return (this.cause == null) ? "" : ": " + Trace.of(this.cause);
	}

	private String kind() {
		return (this.cause == null) ? "" : ": " + this.cause.getClass().getName();
	}

}
