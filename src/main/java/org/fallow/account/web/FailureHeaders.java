package org.fallow.account.web;

import java.io.IOException;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletResponse;
import org.fallow.platform.AnswerHeaders;
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
			AnswerHeaders.all().forEach(answer::setHeader);
		}
	}

}
