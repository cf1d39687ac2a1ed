package org.fallow.platform.web;

import java.util.List;
import java.util.Locale;
import java.util.Map;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;

import org.springframework.boot.webmvc.error.ErrorAttributes;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.context.MessageSource;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.util.MimeTypeUtils;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.servlet.ModelAndView;

/**
 * Every answer that is no answer: a page for people, the page's middle for a part of a
 * page, and problem details as of RFC 9457 for machines.
 */
@Controller
class FailureController implements ErrorController {

	private final ErrorAttributes attributes;

	private final MessageSource messages;

	private final RequestBounds bounds;

	FailureController(ErrorAttributes attributes, MessageSource messages, RequestBounds bounds) {
		this.attributes = attributes;
		this.messages = messages;
		this.bounds = bounds;
	}

	@RequestMapping("/error")
	Object answer(HttpServletRequest request, Locale locale) {
		Failure failure = Failure.of(status(request), method(request), FailureFilter.route(request), cause(request));
		failure.log();
		if (request.getHeader("HX-Request") != null) {
			return page("error :: main", failure);
		}
		if (isPerson(request.getHeader(HttpHeaders.ACCEPT))) {
			return page(failure.status().is5xxServerError() ? "error/bare" : "error", failure);
		}
		return ResponseEntity.status(failure.status())
			.contentType(MediaType.APPLICATION_PROBLEM_JSON)
			.body(problem(failure, locale));
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

	private @Nullable Throwable cause(HttpServletRequest request) {
		Throwable caught = FailureFilter.cause(request);
		return (caught != null) ? caught : this.attributes.getError(new ServletWebRequest(request));
	}

	private ModelAndView page(String view, Failure failure) {
		return new ModelAndView(
				view, Map.of("told", failure.told(), "quote", failure.id(), "megabytes",
						this.bounds.fileSize().toMegabytes(), "kilobytes", this.bounds.formSize().toKilobytes()),
				failure.status());
	}

	private ProblemDetail problem(Failure failure, Locale locale) {
		Object[] limits = { this.bounds.fileSize().toMegabytes(), this.bounds.formSize().toKilobytes() };
		ProblemDetail problem = ProblemDetail.forStatusAndDetail(failure.status(),
				this.messages.getMessage("error." + failure.told() + ".text", limits, locale));
		problem.setInstance(failure.instance());
		return problem;
	}

	/** Browsers name HTML; whoever does not, or puts JSON first, is a program. */
	private static boolean isPerson(@Nullable String accept) {
		try {
			List<MediaType> accepted = MediaType.parseMediaTypes(accept);
			MimeTypeUtils.sortBySpecificity(accepted);
			return accepted.stream()
				.filter((type) -> isHtml(type) || type.getSubtype().endsWith("json"))
				.findFirst()
				.filter(FailureController::isHtml)
				.isPresent();
		}
		catch (InvalidMediaTypeException ex) {
			return false;
		}
	}

	private static boolean isHtml(MediaType type) {
		return type.equalsTypeAndSubtype(MediaType.TEXT_HTML);
	}

}
