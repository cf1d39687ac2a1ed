package org.fallow.account.web;

import java.io.IOException;

import jakarta.servlet.http.HttpServletResponse;

import org.springframework.security.authorization.AuthorizationDeniedException;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;

/**
 * What a module's door refuses does not exist for whoever asks: the answer is the one to
 * an id that nobody has.
 */
@ControllerAdvice
class Denied {

	@ExceptionHandler(AuthorizationDeniedException.class)
	void denied(HttpServletResponse response) throws IOException {
		response.sendError(HttpServletResponse.SC_NOT_FOUND);
	}

}
