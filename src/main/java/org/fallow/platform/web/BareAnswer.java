package org.fallow.platform.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.fallow.platform.HeadersOfFailures;
import org.fallow.platform.Language;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.WebContext;
import org.thymeleaf.web.servlet.JakartaServletWebApplication;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.resource.ResourceUrlProvider;

/**
 * Answers without a session, a signed-in person or a database, since one of them may be
 * what failed.
 */
@Component
class BareAnswer {

	private static final String POLICY = "Content-Security-Policy";

	/** After how long a program may ask again. */
	private static final String RETRY_SECONDS = "10";

	private final ITemplateEngine templates;

	private final JsonMapper json;

	private final ResourceUrlProvider files;

	private final FailureWords words;

	private final ObjectProvider<HeadersOfFailures> headers;

	BareAnswer(ITemplateEngine templates, JsonMapper json, ResourceUrlProvider files, FailureWords words,
			ObjectProvider<HeadersOfFailures> headers) {
		this.headers = headers;
		this.templates = templates;
		this.json = json;
		this.files = files;
		this.words = words;
	}

	void write(Failure failure, HttpServletRequest request, HttpServletResponse response) throws IOException {
		boolean part = FailureWords.isForPart(request);
		boolean page = part || FailureWords.isForPerson(request);
		String text = page ? page(failure, part, request, response)
				: this.json.writeValueAsString(this.words.problem(failure, Language.of(request).locale()));
		forget(response);
		this.headers.ifAvailable((missing) -> missing.addTo(response));
		response.setStatus(failure.status().value());
		if (failure.status() == HttpStatus.SERVICE_UNAVAILABLE) {
			response.setHeader(HttpHeaders.RETRY_AFTER, RETRY_SECONDS);
		}
		response.setContentType(page ? "text/html;charset=UTF-8" : MediaType.APPLICATION_PROBLEM_JSON_VALUE);
		response.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
	}

	/** Whatever was begun; the headers that browsers are to heed stay. */
	private static void forget(HttpServletResponse response) {
		Map<String, List<String>> headers = new LinkedHashMap<>();
		response.getHeaderNames()
			.stream()
			.filter((name) -> !name.toLowerCase(Locale.ROOT).startsWith("content-") || name.equals(POLICY))
			.forEach((name) -> headers.put(name, List.copyOf(response.getHeaders(name))));
		response.reset();
		headers.forEach((name, values) -> values.forEach((value) -> response.addHeader(name, value)));
	}

	private String page(Failure failure, boolean part, HttpServletRequest request, HttpServletResponse response) {
		Map<String, Object> model = new HashMap<>(this.words.model(failure));
		model.put("stylesheet", file("/css/fallow.css"));
		model.put("icon", file("/images/icon.svg"));
		if (Failure.LOST.contains(failure.status())) {
			model.put("sent", SentForm.of(request));
			model.put("again", HttpMethod.GET.matches(request.getMethod()));
		}
		WebContext context = new WebContext(JakartaServletWebApplication.buildApplication(request.getServletContext())
			.buildExchange(request, response), Language.of(request).locale(), model);
		return part ? this.templates.process("error", Set.of("main"), context)
				: this.templates.process("error/bare", context);
	}

	private String file(String path) {
		String versioned = this.files.getForLookupPath(path);
		return (versioned != null) ? versioned : path;
	}

}
