package org.fallow.platform.web;

import java.util.Locale;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;

import org.springframework.boot.webmvc.error.ErrorAttributes;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.servlet.ModelAndView;

/**
 * Answers what a rule, a filter or the server refused: a page for people, the page's
 * middle for a part of a page, and problem details for machines. What broke is answered
 * by {@link FailureFilter}.
 */
@Controller
class FailureController implements ErrorController {

	private final ErrorAttributes attributes;

	private final FailureWords words;

	FailureController(ErrorAttributes attributes, FailureWords words) {
		this.attributes = attributes;
		this.words = words;
	}

	@RequestMapping("/error")
	Object answer(HttpServletRequest request, Locale locale) {
		Failure failure = Failure
			.of(status(request), method(request), FailureFilter.route(request),
					this.attributes.getError(new ServletWebRequest(request)))
			.after(request);
		failure.log();
		if (FailureWords.isForPart(request)) {
			return new ModelAndView("error :: main", this.words.model(failure), failure.status());
		}
		if (FailureWords.isForPerson(request)) {
			String view = failure.status().is5xxServerError() ? "error/bare" : "error";
			return new ModelAndView(view, this.words.model(failure), failure.status());
		}
		return ResponseEntity.status(failure.status())
			.contentType(MediaType.APPLICATION_PROBLEM_JSON)
			.body(this.words.problem(failure, locale));
	}

	/** Nothing has failed for somebody who asks for this address: it is no page. */
	private static int status(HttpServletRequest request) {
		return (request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE) instanceof Integer code) ? code
				: HttpStatus.NOT_FOUND.value();
	}

	/** The server turns the request into a GET before it asks for this page. */
	private static String method(HttpServletRequest request) {
		return (request.getAttribute(RequestDispatcher.ERROR_METHOD) instanceof String asked) ? asked
				: request.getMethod();
	}

}
