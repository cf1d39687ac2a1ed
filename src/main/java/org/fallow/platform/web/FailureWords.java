package org.fallow.platform.web;

import java.util.List;
import java.util.Locale;
import java.util.Map;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.http.HttpHeaders;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.stereotype.Component;
import org.springframework.util.MimeTypeUtils;

/**
 * Says a failure to whoever asked: to people in a page, to machines in problem details as
 * of RFC 9457.
 */
@Component
class FailureWords {

	private final MessageSource messages;

	private final RequestBounds bounds;

	FailureWords(MessageSource messages, RequestBounds bounds) {
		this.messages = messages;
		this.bounds = bounds;
	}

	/** What the pages {@code error} and {@code error/bare} need. */
	Map<String, Object> model(Failure failure) {
		return Map.of("told", failure.told(), "quote", failure.id(), "megabytes", this.bounds.fileSize().toMegabytes(),
				"kilobytes", this.bounds.formSize().toKilobytes());
	}

	ProblemDetail problem(Failure failure, Locale locale) {
		Object[] limits = { this.bounds.fileSize().toMegabytes(), this.bounds.formSize().toKilobytes() };
		ProblemDetail problem = ProblemDetail.forStatusAndDetail(failure.status(),
				this.messages.getMessage("error." + failure.told() + ".text", limits, locale));
		problem.setInstance(failure.instance());
		return problem;
	}

	/** A part of a page is asked for by htmx, which names no HTML. */
	static boolean isForPart(HttpServletRequest request) {
		return request.getHeader("HX-Request") != null;
	}

	/** Browsers name HTML; whoever does not, or puts JSON first, is a program. */
	static boolean isForPerson(HttpServletRequest request) {
		return isForPerson(request.getHeader(HttpHeaders.ACCEPT));
	}

	private static boolean isForPerson(@Nullable String accept) {
		try {
			List<MediaType> accepted = MediaType.parseMediaTypes(accept);
			MimeTypeUtils.sortBySpecificity(accepted);
			return accepted.stream()
				.filter((type) -> isHtml(type) || type.getSubtype().endsWith("json"))
				.findFirst()
				.filter(FailureWords::isHtml)
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
