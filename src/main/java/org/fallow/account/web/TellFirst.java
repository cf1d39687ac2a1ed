package org.fallow.account.web;

import java.io.IOException;
import java.time.Instant;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import org.fallow.access.PersonId;
import org.fallow.account.OtherHands;

import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Whoever signs in to an account about which others did something is told that before the
 * page they came for.
 */
@Configuration(proxyBeanMethods = false)
class TellFirst implements WebMvcConfigurer {

	/** Since when there is something to tell; gone once it was told. */
	static final String SINCE = "fallow.told-since";

	/** The page that was asked for. */
	static final String WANTED = "fallow.told-before";

	static final String PAGE = "/account/told";

	/** Notes a sign-in in its new session. */
	static void note(OtherHands hands, PersonId person, HttpSession session) {
		hands.signedIn(person).ifPresent((since) -> session.setAttribute(SINCE, since));
	}

	@Override
	public void addInterceptors(InterceptorRegistry registry) {
		registry.addInterceptor(new HandlerInterceptor() {
			@Override
			public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
					throws IOException {
				if (!isPage(request, handler)) {
					return true;
				}
				HttpSession session = request.getSession(false);
				if (session == null || !(session.getAttribute(SINCE) instanceof Instant)) {
					return true;
				}
				String query = request.getQueryString();
				session.setAttribute(WANTED, path(request) + ((query == null) ? "" : "?" + query));
				response.sendRedirect(request.getContextPath() + PAGE);
				return false;
			}
		});
	}

	private static String path(HttpServletRequest request) {
		return request.getRequestURI().substring(request.getContextPath().length());
	}

	/**
	 * Nothing is put off that is sent, and nothing that is a part of a page or a file.
	 */
	private static boolean isPage(HttpServletRequest request, Object handler) {
		String path = path(request);
		return handler instanceof HandlerMethod && HttpMethod.GET.matches(request.getMethod())
				&& request.getHeader(LostSession.PART) == null && !path.equals(PAGE) && !path.equals("/error")
				&& !path.startsWith("/calendar/") && !path.startsWith("/actuator/");
	}

}
