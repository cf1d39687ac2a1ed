package org.fallow.account.web;

import java.io.IOException;
import java.util.List;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.fallow.account.OtherHands;
import org.fallow.account.SignInWays;

import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.HttpMessageConverterAuthenticationSuccessHandler;
import org.springframework.security.web.authentication.RememberMeServices;
import org.springframework.security.web.authentication.session.ChangeSessionIdAuthenticationStrategy;
import org.springframework.security.web.authentication.session.CompositeSessionAuthenticationStrategy;
import org.springframework.security.web.csrf.CsrfAuthenticationStrategy;
import org.springframework.security.web.csrf.HttpSessionCsrfTokenRepository;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.security.web.webauthn.authentication.WebAuthnAuthenticationFilter;

/**
 * The library's filter with what it leaves out: another session id, another form token, a
 * body of bounded length, and a refusal of what is no signature at all.
 */
class PasskeyFilter extends WebAuthnAuthenticationFilter {

	/** No passkey signs more bytes than this. */
	private static final long LONGEST_SIGNATURE = 64 * 1024;

	PasskeyFilter(String path, SignInWays ways, RememberMeServices stay, OtherHands hands) {
		RequestMatcher here = PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, path);
		setRequiresAuthenticationRequestMatcher((request) -> here.matches(request) && isShort(request));
		setAuthenticationManager(ways.byPasskey());
		setSessionAuthenticationStrategy(
				new CompositeSessionAuthenticationStrategy(List.of(new ChangeSessionIdAuthenticationStrategy(),
						new CsrfAuthenticationStrategy(new HttpSessionCsrfTokenRepository()))));
		setRememberMeServices(stay);
		setAuthenticationSuccessHandler(new NoteDevice(hands, new HttpMessageConverterAuthenticationSuccessHandler()));
	}

	private static boolean isShort(HttpServletRequest request) {
		return request.getContentLengthLong() >= 0 && request.getContentLengthLong() <= LONGEST_SIGNATURE;
	}

	@Override
	public Authentication attemptAuthentication(HttpServletRequest request, HttpServletResponse response)
			throws IOException, ServletException {
		try {
			return super.attemptAuthentication(request, response);
		}
		catch (IllegalArgumentException ex) {
			throw new BadCredentialsException("no signature", ex);
		}
	}

}
