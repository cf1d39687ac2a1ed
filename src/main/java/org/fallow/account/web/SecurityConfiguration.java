package org.fallow.account.web;

import java.io.IOException;
import java.util.function.Predicate;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.fallow.account.OtherHands;
import org.fallow.account.SignInWays;
import org.fallow.account.TooManyTries;
import org.fallow.platform.AnswerHeaders;
import org.fallow.team.Standing;

import org.springframework.boot.security.autoconfigure.web.servlet.PathRequest;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.authentication.DisabledException;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.authorization.AuthorizationDeniedException;
import org.springframework.security.authorization.AuthorizationManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.access.AccessDeniedHandlerImpl;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;
import org.springframework.security.web.authentication.SavedRequestAwareAuthenticationSuccessHandler;
import org.springframework.security.web.authentication.www.BasicAuthenticationFilter;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.firewall.HttpFirewall;
import org.springframework.security.web.firewall.StrictHttpFirewall;
import org.springframework.security.web.util.matcher.OrRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.session.security.web.authentication.SpringSessionRememberMeServices;

/**
 * Who may ask for what: everything needs a sign-in except the sign-in and set-up pages,
 * static files, health and calendars, whose addresses are secrets. A page that no rule
 * here names is closed to everybody. Each module's controllers check whose data it is.
 */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {

	private static final String SIGN_IN = "/sign-in";

	private static final RequestMatcher SIGN_IN_PATH = PathPatternRequestMatcher.withDefaults().matcher(SIGN_IN);

	private static final RequestMatcher CALENDARS = new OrRequestMatcher(
			PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.GET, "/calendar/*/**"),
			PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.HEAD, "/calendar/*/**"));

	/**
	 * The pages of everybody who is signed in, one by one: a page that is named nowhere
	 * is closed.
	 */
	private static final String[] FOR_EVERYBODY = { "/", "/account", "/account/told", "/account/language",
			"/account/passkeys", "/account/passkeys/options", "/account/passkeys/remove", "/account/sessions/end",
			"/account/sessions/end-all", "/password", "/today", "/morning", "/again", "/again/red-flags",
			"/vaccination", "/device", "/mornings", "/session", "/session/*", "/sessions", "/sessions/usual", "/report",
			"/slip", "/return-path", "/clearance", "/thread", "/calendar", "/calendar/new", "/calendar/revoke",
			"/sharing", "/sharing/give", "/sharing/withdraw", "/sharing/leave", "/merges/*", "/merges/*/read",
			"/merges/*/undo", "/programme", "/programme/*", "/programme/*/back", "/programme/*/copy",
			"/programme/*/file", "/programme/*/file.csv" };

	/** What becomes of a page that no rule names. */
	private static final AuthorizationDecision UNNAMED = new AuthorizationDecision(false);

	private static final SpringSessionRememberMeServices STAY = stay();

	private static final AuthenticationEntryPoint TO_SIGN_IN = new LoginUrlAuthenticationEntryPoint(SIGN_IN);

	private static final AccessDeniedHandler FORBIDDEN = new AccessDeniedHandlerImpl();

	/**
	 * One door for every field of every form: none holds the character that no database
	 * keeps in a text, and that nobody types.
	 */
	@Bean
	HttpFirewall fieldsWithoutNul() {
		StrictHttpFirewall firewall = new StrictHttpFirewall();
		firewall.setAllowedParameterValues((value) -> value == null || value.indexOf(0) < 0);
		return firewall;
	}

	/**
	 * Calendars, which programs read without a sign-in. Their addresses are secrets: no
	 * session is looked for or begun, where one that leads nowhere would be kept as the
	 * page to go to after a sign-in.
	 */
	@Bean
	@Order(1)
	SecurityFilterChain calendars(HttpSecurity http) throws Exception {
		http.securityMatcher(CALENDARS);
		http.authorizeHttpRequests((requests) -> requests.anyRequest().permitAll());
		http.sessionManagement((sessions) -> sessions.sessionCreationPolicy(SessionCreationPolicy.STATELESS));
		http.requestCache((cache) -> cache.disable());
		http.headers(SecurityConfiguration::headers);
		return http.build();
	}

	@Bean
	SecurityFilterChain pages(HttpSecurity http, Here here, SignInWays ways, OtherHands hands) throws Exception {
		http.authorizeHttpRequests((requests) -> requests
			.requestMatchers(PathRequest.toStaticResources().atCommonLocations())
			.permitAll()
			.requestMatchers(SIGN_IN, "/join", "/join/**", "/set-up", "/error", "/actuator/health",
					"/actuator/health/**")
			.permitAll()
			.requestMatchers(SIGN_IN + "/passkey", SIGN_IN + "/passkey/options", "/forgotten", "/reset", "/reset/*")
			.permitAll()
			.requestMatchers("/board", "/board/**", "/merges", "/athletes/**", "/rules", "/rules/**", "/roll", "/brief",
					"/style")
			.access(standing(here, Standing::coach))
			.requestMatchers("/people", "/people/**", "/import", "/import/**")
			.access(standing(here, Standing::headCoach))
			.requestMatchers("/club", "/club/**")
			.access(standing(here, Standing::owner))
			.requestMatchers(FOR_EVERYBODY)
			.authenticated()
			.anyRequest()
			.access((authentication, context) -> UNNAMED));
		http.authenticationManager(ways.byPassword());
		http.formLogin((form) -> form.loginPage(SIGN_IN)
			.successHandler(new NoteDevice(hands, new SavedRequestAwareAuthenticationSuccessHandler()))
			.failureHandler(SecurityConfiguration::failed));
		http.rememberMe((remember) -> remember.rememberMeServices(STAY));
		http.addFilterBefore(new PasskeyFilter(SIGN_IN + "/passkey", ways, STAY, hands),
				BasicAuthenticationFilter.class);
		http.logout((logout) -> logout.logoutUrl("/sign-out").logoutSuccessUrl(SIGN_IN + "?signed-out"));
		http.sessionManagement((sessions) -> sessions.invalidSessionStrategy(new LostSession(SIGN_IN + "?expired"))
			.sessionFixation((fixation) -> fixation.changeSessionId()));
		http.exceptionHandling((exceptions) -> exceptions.accessDeniedHandler(SecurityConfiguration::denied)
			.authenticationEntryPoint(SecurityConfiguration::unknown));
		http.httpBasic((basic) -> basic.disable());
		http.headers(SecurityConfiguration::headers);
		return http.build();
	}

	/** Nothing of what was typed is kept, neither in the session nor in the address. */
	private static void failed(HttpServletRequest request, HttpServletResponse response,
			AuthenticationException failure) throws IOException {
		String why = (failure instanceof TooManyTries tries) ? "?wait=" + tries.seconds()
				: (failure instanceof DisabledException) ? "?set-aside" : "?failed";
		response.sendRedirect(request.getContextPath() + SIGN_IN + why);
	}

	/** On one's own phone a session lasts until nobody looked in for sixty days. */
	private static SpringSessionRememberMeServices stay() {
		SpringSessionRememberMeServices services = new SpringSessionRememberMeServices();
		services.setRememberMeParameterName("stay");
		services.setValiditySeconds(StaySignedIn.SECONDS);
		return services;
	}

	private static void unknown(HttpServletRequest request, HttpServletResponse response,
			AuthenticationException nobody) throws IOException, ServletException {
		if (request.getHeader(LostSession.PART) != null) {
			LostSession.leave(request, response, SIGN_IN);
		}
		else {
			TO_SIGN_IN.commence(request, response, nobody);
		}
	}

	/**
	 * A sign-in page that stood open too long is shown anew, and what no rule names is
	 * not there; all else is forbidden.
	 */
	private static void denied(HttpServletRequest request, HttpServletResponse response, AccessDeniedException denied)
			throws IOException, ServletException {
		if (denied instanceof CsrfException && SIGN_IN_PATH.matches(request)) {
			response.sendRedirect(request.getContextPath() + SIGN_IN + "?expired");
		}
		else if (denied instanceof AuthorizationDeniedException refused
				&& refused.getAuthorizationResult() == UNNAMED) {
			response.sendError(HttpStatus.NOT_FOUND.value());
		}
		else {
			FORBIDDEN.handle(request, response, denied);
		}
	}

	private static AuthorizationManager<RequestAuthorizationContext> standing(Here here, Predicate<Standing> asked) {
		return (authentication, context) -> new AuthorizationDecision(asked.test(here.standing()));
	}

	private static void headers(HeadersConfigurer<HttpSecurity> headers) {
		headers.contentSecurityPolicy((policy) -> policy.policyDirectives(AnswerHeaders.POLICY));
		headers.referrerPolicy((referrer) -> referrer.policy(ReferrerPolicy.NO_REFERRER));
		BrowserRules.add(headers);
	}

}
