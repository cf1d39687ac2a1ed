package org.fallow.account.web;

import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;

import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.session.security.web.authentication.SpringSessionRememberMeServices;
import org.springframework.session.web.http.CookieSerializer;
import org.springframework.session.web.http.CookieSerializer.CookieValue;
import org.springframework.session.web.http.DefaultCookieSerializer;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * On one's own phone a session lasts until nobody looked in for sixty days, and so does
 * its cookie: it is written anew on each day of use. The library alone would give it a
 * life of 68 years.
 */
@Configuration(proxyBeanMethods = false)
class StaySignedIn implements WebMvcConfigurer {

	static final int SECONDS = (int) Duration.ofDays(60).toSeconds();

	private static final String WRITTEN = "fallow.cookie";

	private final ObjectProvider<CookieSerializer> cookies;

	private final Clock clock;

	StaySignedIn(ObjectProvider<CookieSerializer> cookies, Clock clock) {
		this.cookies = cookies;
		this.clock = clock;
	}

	@Bean
	static BeanPostProcessor cookieThatEnds() {
		return new BeanPostProcessor() {
			@Override
			public Object postProcessAfterInitialization(Object bean, String name) {
				return (bean instanceof DefaultCookieSerializer cookies) ? new Ending(cookies) : bean;
			}
		};
	}

	@Override
	public void addInterceptors(InterceptorRegistry registry) {
		registry.addInterceptor(new HandlerInterceptor() {
			@Override
			public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
				HttpSession session = request.getSession(false);
				if (session != null && session.getMaxInactiveInterval() == SECONDS) {
					renew(session, request, response);
				}
				return true;
			}
		});
	}

	private void renew(HttpSession session, HttpServletRequest request, HttpServletResponse response) {
		long today = LocalDate.ofInstant(this.clock.instant(), ZoneOffset.UTC).toEpochDay();
		if (!Long.valueOf(today).equals(session.getAttribute(WRITTEN))) {
			session.setAttribute(WRITTEN, today);
			CookieValue cookie = new CookieValue(request, response, session.getId());
			cookie.setCookieMaxAge(SECONDS);
			this.cookies.getObject().writeCookieValue(cookie);
		}
	}

	/** Gives a cookie that is to stay an end. */
	private record Ending(DefaultCookieSerializer cookies) implements CookieSerializer {

		@Override
		public void writeCookieValue(CookieValue cookie) {
			boolean stay = cookie.getRequest()
				.getAttribute(SpringSessionRememberMeServices.REMEMBER_ME_LOGIN_ATTR) != null;
			if (stay && cookie.getCookieMaxAge() < 0 && !cookie.getCookieValue().isEmpty()) {
				cookie.setCookieMaxAge(SECONDS);
			}
			this.cookies.writeCookieValue(cookie);
		}

		@Override
		public List<String> readCookieValues(HttpServletRequest request) {
			return this.cookies.readCookieValues(request);
		}

	}

}
