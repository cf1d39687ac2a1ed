package org.fallow.exchange.web;

import java.io.IOException;
import java.util.Locale;
import java.util.Objects;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Files are taken at one address only. Anywhere else a body in parts is refused before
 * anything reads it: reading would write up to a whole file to the disk for anybody.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
class UploadBounds extends OncePerRequestFilter {

	private static final String TAKES_FILES = "/import";

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		if (isInParts(request) && !takesFiles(request)) {
			response.sendError(HttpStatus.UNSUPPORTED_MEDIA_TYPE.value());
			return;
		}
		chain.doFilter(request, response);
	}

	private static boolean takesFiles(HttpServletRequest request) {
		return request.getRequestURI().equals(request.getContextPath() + TAKES_FILES);
	}

	private static boolean isInParts(HttpServletRequest request) {
		return Objects.requireNonNullElse(request.getContentType(), "")
			.strip()
			.toLowerCase(Locale.ROOT)
			.startsWith("multipart/");
	}

}
