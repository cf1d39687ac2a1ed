package org.fallow.platform.web;

import java.io.IOException;
import java.net.HttpCookie;
import java.net.http.HttpHeaders;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What browsers are told with every answer, and the session's cookie.
 */
@TestPropertySource(properties = "fallow.proxies=127.0.0.1,::1")
class HeadersTests extends OverHttp {

	private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; "
			+ "img-src 'self' data:; font-src 'self'; connect-src 'self'; form-action 'self'; "
			+ "frame-ancestors 'none'; base-uri 'none'";

	private static final String[] BY_TLS = { "Accept", Caller.BROWSER, "X-Forwarded-Proto", "https" };

	@ParameterizedTest
	@ValueSource(strings = { "/board", "/people", "/rules", "/import", "/password", "/style", "/nowhere",
			"/athletes/Ann", "/club", "/board/faulty/x", "/", "/board//x", "/sign-out" })
	void sendsEveryAnswerUnderTheSameRules(String path) {
		assertStrict(signedIn(this.coachName).get(path).headers());
	}

	@ParameterizedTest
	@ValueSource(strings = { "/today", "/morning", "/session", "/return-path", "/report" })
	void sendsAnAthletesPagesUnderTheSameRules(String path) {
		HttpResponse<String> answer = signedIn(open(this.stranger.id())).get(path);
		assertThat(answer.statusCode()).isEqualTo(200);
		assertStrict(answer.headers());
	}

	@ParameterizedTest
	@ValueSource(strings = { "/sign-in", "/set-up", "/board", "/actuator/health", "/actuator/health/readiness" })
	void sendsNobodyUnderTheSameRules(String path) {
		assertStrict(nobody().get(path).headers());
		assertStrict(nobody().get(path, "Accept", "application/json").headers());
	}

	@Test
	void sendsRefusalsUnderTheSameRules() {
		Caller coach = signedIn(this.coachName);
		assertStrict(coach.sendAs("POST", "/sign-out", BodyPublishers.noBody()).headers());
		assertStrict(coach.sendAs("TRACE", "/board", BodyPublishers.noBody()).headers());
		assertStrict(
				coach.sendAs("POST", "/morning", BodyPublishers.noBody(), "Content-Type", "multipart/mixed").headers());
	}

	@ParameterizedTest
	@ValueSource(strings = { "GET /sign-in?a=%zz<\u0001> HTTP/1.1", "GET /sign-in HTTP/7.9", "G\u0001T / HTTP/1.1",
			"GET http://[x/ HTTP/1.1", "GET /\\..\\sign-in HTTP/1.1", "nonsense", "GET /%00 HTTP/1.1",
			"GET /a%2fb HTTP/1.1" })
	void sendsWhatTheServerItselfRefusesUnderTheSameRules(String line) throws IOException {
		String answer = RawSocket.answer(this.port,
				line + "\r\nHost: localhost\r\nAccept: text/html\r\nConnection: close\r\n\r\n");
		assertStrictlyRefused(answer);
	}

	@ParameterizedTest
	@ValueSource(strings = { "Host: a\r\nHost: b", "Host: localhost\r\nContent-Length: x",
			"Host: localhost\r\nContent-Length: 1\r\nContent-Length: 2", "Host: localhost\r\nTransfer-Encoding: odd",
			"Host: local host", "No: host" })
	void sendsWhatTheServerCannotReadUnderTheSameRules(String headers) throws IOException {
		assertStrictlyRefused(
				RawSocket.answer(this.port, "GET /sign-in HTTP/1.1\r\n" + headers + "\r\nConnection: close\r\n\r\n"));
		assertStrictlyRefused(RawSocket.answer(this.port,
				"GET /sign-in HTTP/1.1\r\nHost: localhost\r\nAccept-Language: de\r\nX-Long: " + "x".repeat(64 * 1024)
						+ "\r\n\r\n"));
	}

	private static void assertStrictlyRefused(String answer) {
		assertThat(answer).as(answer).matches("(?s)HTTP/1\\.1 (4\\d\\d|50[15]) .*");
		String head = answer.substring(0, answer.indexOf("\r\n\r\n") + 2);
		Map<String, List<String>> headers = head.lines()
			.skip(1)
			.collect(Collectors.groupingBy((one) -> one.substring(0, one.indexOf(':')),
					Collectors.mapping((one) -> one.substring(one.indexOf(':') + 1).strip(), Collectors.toList())));
		assertStrict(HttpHeaders.of(headers, (name, value) -> true));
		assertThat(answer).doesNotContain("Tomcat", "org.apache", "xxxxx");
		assertThat(answer.substring(head.length()).strip()).isNotEmpty();
	}

	@Test
	void keepsTheCookieOfThosePutToStayForSixtyDays() {
		Caller caller = nobody();
		caller.get("/sign-in");
		HttpResponse<String> answer = caller.post("/sign-in",
				java.util.Map.of("username", this.coachName, "password", PASSWORD, "stay", "on"));
		assertThat(cookieOf(answer)).contains("HttpOnly", "SameSite=Lax", "Max-Age=5184000;");
	}

	@ParameterizedTest
	@ValueSource(strings = { "text/html", Caller.BROWSER, "text/html;q=1.0, image/png", "image/*", "*/*",
			"application/json" })
	void showsHealthToWhateverAsks(String accept) {
		for (String path : List.of("/actuator/health", "/actuator/health/liveness", "/actuator/health/readiness")) {
			HttpResponse<String> answer = nobody().get(path, "Accept", accept);
			assertThat(answer.statusCode()).as(path + " for " + accept).isEqualTo(200);
			assertThat(answer.body()).contains("\"status\":\"UP\"");
		}
		assertThat(nobody().get("/actuator/health", "Accept", "text/html").headers().firstValue("Content-Type"))
			.hasValue("application/json");
	}

	private static void assertStrict(HttpHeaders headers) {
		assertThat(headers.allValues("Content-Security-Policy")).containsExactly(POLICY);
		assertThat(headers.allValues("X-Frame-Options")).containsExactly("DENY");
		assertThat(headers.allValues("X-Content-Type-Options")).containsExactly("nosniff");
		assertThat(headers.allValues("Referrer-Policy")).containsExactly("no-referrer");
		assertThat(headers.allValues("Cross-Origin-Opener-Policy")).containsExactly("same-origin");
		assertThat(headers.allValues("Cross-Origin-Resource-Policy")).containsExactly("same-origin");
		assertThat(headers.allValues("Cache-Control")).hasSize(1).allMatch((value) -> value.contains("no-store"));
		assertThat(headers.allValues("Permissions-Policy")).hasSize(1)
			.allMatch((value) -> value.contains("camera=()") && value.contains("microphone=()")
					&& value.contains("geolocation=()") && value.contains("publickey-credentials-get=(self)")
					&& value.contains("publickey-credentials-create=(self)"));
		assertThat(headers.map()).doesNotContainKeys("server", "x-powered-by", "access-control-allow-origin");
	}

	@Test
	void letsStaticFilesBeKeptUnderTheDigestInTheirAddress() {
		List<String> files = staticFilesOf(nobody().get("/sign-in").body());
		assertThat(files).anyMatch((file) -> file.startsWith("/css/fallow-"))
			.anyMatch((file) -> file.startsWith("/webjars/htmx.org/"))
			.anyMatch((file) -> file.startsWith("/images/icon-"))
			.allMatch((file) -> file.matches(".*-[0-9a-f]{32}\\.(css|js|svg)"));
		for (String file : files) {
			HttpResponse<String> answer = nobody().get(file);
			assertThat(answer.statusCode()).as(file).isEqualTo(200);
			assertThat(answer.headers().allValues("Cache-Control")).containsExactly("max-age=31536000");
			assertThat(answer.headers().allValues("X-Content-Type-Options")).containsExactly("nosniff");
			assertThat(answer.headers().allValues("Set-Cookie")).isEmpty();
		}
	}

	private static List<String> staticFilesOf(String page) {
		return Stream.of(page)
			.flatMap((text) -> Pattern.compile("(?:href|src)=\"(/(?:css|js|images|webjars)/[^\"]+)\"")
				.matcher(text)
				.results())
			.map((found) -> found.group(1))
			.toList();
	}

	@Test
	void asksForTlsOnlyWhereThereIsTls() {
		assertThat(nobody().get("/sign-in").headers().allValues("Strict-Transport-Security")).isEmpty();
		assertThat(nobody().get("/sign-in", BY_TLS).headers().allValues("Strict-Transport-Security"))
			.containsExactly("max-age=31536000");
	}

	@Test
	void keepsTheSessionsCookieFromScriptsAndOtherSites() {
		assertThat(cookieOf(nobody().get("/sign-in"))).contains("HttpOnly", "SameSite=Lax").doesNotContain("Secure");
		assertThat(cookieOf(nobody().get("/sign-in", BY_TLS))).contains("HttpOnly", "SameSite=Lax", "Secure");
	}

	@Test
	void changesTheCookieAtSignInAndForgetsItAtSignOut() {
		Caller caller = nobody();
		caller.get("/sign-in");
		String before = caller.cookie("SESSION").map(HttpCookie::getValue).orElseThrow();
		caller.signIn(this.coachName, PASSWORD);
		String after = caller.cookie("SESSION").map(HttpCookie::getValue).orElseThrow();
		assertThat(after).isNotEqualTo(before);
		caller.post("/sign-out", java.util.Map.of());
		Caller thief = nobody();
		HttpResponse<String> answer = thief.get("/board", "Accept", Caller.BROWSER, "Cookie", "SESSION=" + after);
		assertThat(answer.statusCode()).isEqualTo(302);
		assertThat(thief.location(answer)).startsWith("/sign-in");
	}

	private static String cookieOf(HttpResponse<String> answer) {
		return answer.headers()
			.allValues("Set-Cookie")
			.stream()
			.filter((cookie) -> cookie.startsWith("SESSION="))
			.findFirst()
			.orElseThrow();
	}

}
