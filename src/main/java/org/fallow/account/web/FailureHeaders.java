package org.fallow.account.web;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletResponse;
import org.fallow.platform.HeadersOfFailures;

import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * Headers of the page that says a request was refused before the security filters saw it;
 * all other answers have theirs from {@link SecurityConfiguration}.
 */
@Configuration(proxyBeanMethods = false)
class FailureHeaders {

	private static final Map<String, String> HEADERS = headers();

	@Bean
	FilterRegistrationBean<Filter> headersOfFailures() {
		FilterRegistrationBean<Filter> filter = new FilterRegistrationBean<>(FailureHeaders::add);
		filter.setDispatcherTypes(DispatcherType.ERROR);
		filter.setName("headersOfFailures");
		return filter;
	}

	@Bean
	HeadersOfFailures headersBeforeTheSignInRules() {
		return FailureHeaders::addTo;
	}

	private static void add(ServletRequest request, ServletResponse response, FilterChain chain)
			throws IOException, ServletException {
		if (response instanceof HttpServletResponse answer) {
			addTo(answer);
		}
		chain.doFilter(request, response);
	}

	private static void addTo(HttpServletResponse answer) {
		if (!answer.containsHeader("Content-Security-Policy")) {
			HEADERS.forEach(answer::setHeader);
		}
	}

	private static Map<String, String> headers() {
		Map<String, String> headers = new LinkedHashMap<>();
		headers.put("Content-Security-Policy", SecurityConfiguration.POLICY);
		headers.put("Permissions-Policy", BrowserRules.PERMISSIONS);
		headers.put("Referrer-Policy", "no-referrer");
		headers.put("X-Content-Type-Options", "nosniff");
		headers.put("X-Frame-Options", "DENY");
		headers.put("Cross-Origin-Opener-Policy", "same-origin");
		headers.put("Cross-Origin-Resource-Policy", "same-origin");
		headers.put("Cache-Control", "no-cache, no-store, max-age=0, must-revalidate");
		return headers;
	}

}
