package org.fallow.platform.web;

import java.util.Collections;
import java.util.Enumeration;
import java.util.List;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;

/**
 * A request for a file that everybody may have, or for Fallow's health, without its
 * cookies: whose session it is does not matter, and the sessions are in the database,
 * which may be away.
 */
class WithoutPerson extends HttpServletRequestWrapper {

	private static final List<String> PLACES = List.of("/actuator/health", "/css/", "/js/", "/images/", "/webjars/");

	WithoutPerson(HttpServletRequest request) {
		super(request);
	}

	/** Whether nobody needs to be known for a request. */
	static boolean suits(HttpServletRequest request) {
		String path = request.getRequestURI().substring(request.getContextPath().length());
		return PLACES.stream().anyMatch(path::startsWith);
	}

	@Override
	public Cookie @Nullable [] getCookies() {
		return null;
	}

	@Override
	public @Nullable String getHeader(String name) {
		return isCookie(name) ? null : super.getHeader(name);
	}

	@Override
	public Enumeration<String> getHeaders(String name) {
		return isCookie(name) ? Collections.emptyEnumeration() : super.getHeaders(name);
	}

	private static boolean isCookie(String name) {
		return HttpHeaders.COOKIE.equalsIgnoreCase(name);
	}

}
