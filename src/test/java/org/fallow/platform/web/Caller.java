package org.fallow.platform.web;

import java.io.IOException;
import java.net.CookieManager;
import java.net.CookiePolicy;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Somebody who talks HTTP with Fallow as a browser does: keeps cookies, sends the token
 * that the last page had, follows no redirect by itself.
 */
final class Caller {

	static final String BROWSER = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8";

	private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

	private final CookieManager cookies = new CookieManager(null, CookiePolicy.ACCEPT_ALL);

	private final HttpClient client = HttpClient.newBuilder()
		.cookieHandler(this.cookies)
		.version(HttpClient.Version.HTTP_1_1)
		.build();

	private final String address;

	private String token = "";

	Caller(int port) {
		this.address = "http://localhost:" + port;
	}

	void signIn(String username, String password) {
		get("/sign-in");
		HttpResponse<String> answer = post("/sign-in", Map.of("username", username, "password", password));
		assertThat(answer.statusCode()).isEqualTo(302);
		assertThat(location(answer)).isEqualTo("/");
		get("/password");
	}

	HttpResponse<String> get(String path, String... headers) {
		HttpResponse<String> answer = send(
				request(path, headers.length == 0 ? new String[] { "Accept", BROWSER } : headers).GET());
		Matcher found = TOKEN.matcher(answer.body());
		if (found.find()) {
			this.token = found.group(1);
		}
		return answer;
	}

	/** What is sent for a page or file to whoever takes it compressed. */
	HttpResponse<byte[]> getCompressed(String path) {
		try {
			return this.client.send(request(path, "Accept", BROWSER, "Accept-Encoding", "gzip").GET().build(),
					BodyHandlers.ofByteArray());
		}
		catch (IOException ex) {
			throw new AssertionError("no answer", ex);
		}
		catch (InterruptedException ex) {
			throw new IllegalStateException(ex);
		}
	}

	/** Sends a form with the token of this caller's session. */
	HttpResponse<String> post(String path, Map<String, String> fields) {
		return send(form(path).POST(BodyPublishers.ofString(encoded(fields) + "&_csrf=" + encoded(this.token))));
	}

	/** Sends a body as it is, without a token. */
	HttpResponse<String> sendAs(String method, String path, BodyPublisher body, String... headers) {
		return send(request(path, headers).method(method, body));
	}

	/** Sends a form of which all but the token is given. */
	HttpResponse<String> postRaw(String path, String form) {
		return send(form(path).POST(BodyPublishers.ofString(form + "&_csrf=" + encoded(this.token))));
	}

	private HttpRequest.Builder form(String path) {
		return request(path, "Accept", BROWSER, "Content-Type", "application/x-www-form-urlencoded");
	}

	private HttpRequest.Builder request(String path, String... headers) {
		HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(this.address + path));
		return (headers.length == 0) ? request : request.headers(headers);
	}

	private HttpResponse<String> send(HttpRequest.Builder request) {
		try {
			return this.client.send(request.build(), BodyHandlers.ofString());
		}
		catch (IOException ex) {
			throw new AssertionError("no answer", ex);
		}
		catch (InterruptedException ex) {
			throw new IllegalStateException(ex);
		}
	}

	String token() {
		return this.token;
	}

	Optional<HttpCookie> cookie(String name) {
		return this.cookies.getCookieStore()
			.getCookies()
			.stream()
			.filter((cookie) -> cookie.getName().equals(name))
			.findFirst();
	}

	/** Where an answer leads to, without the server's address. */
	String location(HttpResponse<?> answer) {
		return answer.headers().firstValue("Location").orElse("").replace(this.address, "");
	}

	private static String encoded(Map<String, String> fields) {
		return fields.entrySet()
			.stream()
			.map((field) -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
			.collect(Collectors.joining("&"));
	}

	static String encoded(String text) {
		return URLEncoder.encode(text, StandardCharsets.UTF_8);
	}

}
