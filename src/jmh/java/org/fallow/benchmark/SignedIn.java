package org.fallow.benchmark;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;

/** Somebody who signed in at the page for it, as a browser does, over real sockets. */
final class SignedIn {

	private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\"[^>]*value=\"([^\"]+)\"");

	private final HttpClient client = HttpClient.newBuilder()
		.version(HttpClient.Version.HTTP_1_1)
		.cookieHandler(new CookieManager())
		.connectTimeout(Duration.ofSeconds(10))
		.build();

	private final String address;

	SignedIn(int port, String username, String password) throws IOException, InterruptedException {
		this.address = "http://localhost:" + port;
		Matcher token = TOKEN.matcher(text(get("/sign-in")));
		if (!token.find()) {
			throw new IllegalStateException("the sign-in page has no token");
		}
		String form = "username=" + encoded(username) + "&password=" + encoded(password) + "&_csrf="
				+ encoded(token.group(1));
		HttpResponse<byte[]> answer = this.client.send(
				HttpRequest.newBuilder(URI.create(this.address + "/sign-in"))
					.header("Content-Type", "application/x-www-form-urlencoded")
					.POST(HttpRequest.BodyPublishers.ofString(form))
					.build(),
				HttpResponse.BodyHandlers.ofByteArray());
		String to = answer.headers().firstValue("Location").orElse("");
		if (answer.statusCode() != 302 || to.contains("sign-in")) {
			throw new IllegalStateException("not signed in: " + answer.statusCode() + " " + to);
		}
	}

	private static String encoded(String text) {
		return URLEncoder.encode(text, StandardCharsets.UTF_8);
	}

	/** Asks for a page, compressed, with further headers by name and value. */
	HttpResponse<byte[]> get(String path, String... headers) throws IOException, InterruptedException {
		HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(this.address + path))
			.header("Accept", "text/html")
			.header("Accept-Language", "en")
			.header("Accept-Encoding", "gzip")
			.timeout(Duration.ofMinutes(5));
		if (headers.length > 0) {
			request.headers(headers);
		}
		return this.client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
	}

	static String text(HttpResponse<byte[]> answer) throws IOException {
		byte[] body = answer.body();
		if (answer.headers().firstValue("Content-Encoding").filter("gzip"::equals).isPresent()) {
			try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(body))) {
				body = in.readAllBytes();
			}
		}
		return new String(body, StandardCharsets.UTF_8);
	}

}
