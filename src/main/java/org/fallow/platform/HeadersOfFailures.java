package org.fallow.platform;

import jakarta.servlet.http.HttpServletResponse;

/**
 * What browsers are told with an answer that was given before the sign-in rules saw the
 * request.
 */
@FunctionalInterface
public interface HeadersOfFailures {

	/**
	 * Adds the headers unless the answer has them.
	 * @param response not yet committed
	 */
	void addTo(HttpServletResponse response);

}
