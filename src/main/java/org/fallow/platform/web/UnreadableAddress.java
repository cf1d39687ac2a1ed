package org.fallow.platform.web;

import java.io.IOException;

import jakarta.servlet.http.HttpServletResponse;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;

/**
 * An address with an id that is none is an unknown address: it answers as an id of
 * somebody else does.
 */
@ControllerAdvice
class UnreadableAddress {

	@ExceptionHandler
	void answer(MethodArgumentTypeMismatchException mismatch, HttpServletResponse response) throws IOException {
		boolean address = mismatch.getParameter().hasParameterAnnotation(PathVariable.class);
		response.sendError((address ? HttpStatus.NOT_FOUND : HttpStatus.BAD_REQUEST).value());
	}

}
