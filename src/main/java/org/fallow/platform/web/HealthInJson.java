package org.fallow.platform.web;

import java.io.IOException;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * The page of health has one form, JSON: whoever looks at it with a browser, which asks
 * for HTML, gets that instead of a refusal or a file to download.
 */
@Component
class HealthInJson extends OncePerRequestFilter {

	private static final String HEALTH = "/actuator/health";

	@Override
	protected boolean shouldNotFilter(HttpServletRequest request) {
		String path = request.getRequestURI().substring(request.getContextPath().length());
		String accept = request.getHeader(HttpHeaders.ACCEPT);
		boolean health = path.equals(HEALTH) || path.startsWith(HEALTH + "/");
		return !health || (accept != null && accept.contains("json"));
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		chain.doFilter(new AskingForJson(request), response);
	}

	private static final class AskingForJson extends HttpServletRequestWrapper {

		AskingForJson(HttpServletRequest request) {
			super(request);
		}

		@Override
		public @Nullable String getHeader(String name) {
			return isAccept(name) ? MediaType.APPLICATION_JSON_VALUE : super.getHeader(name);
		}

		@Override
		public Enumeration<String> getHeaders(String name) {
			return isAccept(name) ? Collections.enumeration(List.of(MediaType.APPLICATION_JSON_VALUE))
					: super.getHeaders(name);
		}

		private static boolean isAccept(String name) {
			return HttpHeaders.ACCEPT.equalsIgnoreCase(name);
		}

	}

}
