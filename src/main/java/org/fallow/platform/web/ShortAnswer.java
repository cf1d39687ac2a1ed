package org.fallow.platform.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.fallow.platform.AnswerHeaders;
import org.fallow.platform.Language;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * A sentence in plain text for what is refused before any page, session or filter is
 * reached, under the same headers as every page.
 */
@Component
class ShortAnswer {

	private final MessageSource messages;

	private final RequestBounds bounds;

	ShortAnswer(MessageSource messages, RequestBounds bounds) {
		this.messages = messages;
		this.bounds = bounds;
	}

	void write(Failure failure, HttpServletRequest request, HttpServletResponse response) throws IOException {
		Locale language = Language.wished(request).locale();
		byte[] text = (said(failure, "title", language) + "\n\n" + said(failure, "text", language) + "\n")
			.getBytes(StandardCharsets.UTF_8);
		response.setStatus(failure.status().value());
		AnswerHeaders.all().forEach(response::setHeader);
		response.setContentType("text/plain;charset=UTF-8");
		response.setHeader("Content-Language", language.getLanguage());
		response.setContentLength(text.length);
		response.getOutputStream().write(text);
		response.flushBuffer();
	}

	private String said(Failure failure, String part, Locale language) {
		Object[] limits = { this.bounds.fileSize().toMegabytes(), this.bounds.formSize().toKilobytes() };
		String code = "error." + failure.told() + "." + part;
		return String.valueOf(this.messages.getMessage(code, limits, code, language));
	}

}
