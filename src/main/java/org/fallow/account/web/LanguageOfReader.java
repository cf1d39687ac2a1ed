package org.fallow.account.web;

import java.util.Locale;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.fallow.access.CurrentPerson;
import org.fallow.account.Accounts;
import org.fallow.platform.Language;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.web.servlet.DispatcherServlet;
import org.springframework.web.servlet.LocaleResolver;

/**
 * Answers in the language the signed-in person has chosen, else in what the browser
 * wishes. It is asked once a request and never kept longer, so that a choice holds on all
 * devices at once.
 */
@Component(DispatcherServlet.LOCALE_RESOLVER_BEAN_NAME)
class LanguageOfReader implements LocaleResolver {

	private static final String FOUND = LanguageOfReader.class.getName();

	private final CurrentPerson current;

	private final Accounts accounts;

	LanguageOfReader(CurrentPerson current, Accounts accounts) {
		this.current = current;
		this.accounts = accounts;
	}

	@Override
	public Locale resolveLocale(HttpServletRequest request) {
		if (request.getAttribute(FOUND) == null) {
			this.current.id().flatMap(this.accounts::language).orElseGet(() -> Language.wished(request)).keep(request);
			request.setAttribute(FOUND, true);
		}
		return Language.of(request).locale();
	}

	@Override
	public void setLocale(HttpServletRequest request, @Nullable HttpServletResponse response, @Nullable Locale locale) {
		throw new UnsupportedOperationException("a language is chosen on the page of the account");
	}

}
