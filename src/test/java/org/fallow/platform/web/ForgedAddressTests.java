package org.fallow.platform.web;

import java.io.IOException;
import java.net.ConnectException;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * Where a request says it comes from, without a named proxy: none of it is believed, and
 * the server listens on its own machine only.
 */
class ForgedAddressTests extends OverHttp {

	@Autowired
	private JdbcClient jdbc;

	private Athlete ann;

	private String annName;

	/** The machine that all tests come from is not to wait. */
	@AfterEach
	void forgetTries() {
		this.jdbc.sql("delete from sign_in_tries").update();
	}

	@BeforeEach
	void makeAnn() {
		this.ann = this.people.addAthlete(this.team.id(), NewAthlete.named("Ann Ashe"));
		this.annName = open(this.ann.id());
	}

	/** Names and values of headers, some of which a proxy would send. */
	static List<String[]> forged() {
		return List.of(new String[] { "X-Forwarded-For", "203.0.113.7" },
				new String[] { "X-Forwarded-For", "203.0.113.7, 10.0.0.1" },
				new String[] { "X-Forwarded-For", "<b>Cay did it</b>" },
				new String[] { "X-Forwarded-For", "2001:db8::7" }, new String[] { "X-Forwarded-For", "fe80::1%eth0" },
				new String[] { "X-Forwarded-For", "[2001:db8::7]:443" }, new String[] { "X-Forwarded-For", "" },
				new String[] { "X-Forwarded-For", ",,,, ," }, new String[] { "X-Forwarded-For", "unknown" },
				new String[] { "X-Forwarded-For", "x".repeat(6_000) },
				new String[] { "Forwarded", "for=203.0.113.7;proto=https;by=127.0.0.1" },
				new String[] { "Forwarded", "for=\"[2001:db8::7]\", for=unknown" },
				new String[] { "X-Real-IP", "203.0.113.7" }, new String[] { "Client-IP", "203.0.113.7" },
				new String[] { "True-Client-IP", "203.0.113.7" }, new String[] { "Via", "1.1 203.0.113.7" });
	}

	@ParameterizedTest
	@MethodSource("forged")
	void notesTheAddressOfTheConnectionWhateverIsSaid(String name, String value) {
		Caller coach = signedIn(this.coachName);
		assertThat(coach.get("/athletes/" + this.ann.id(), "Accept", Caller.BROWSER, name, value).statusCode())
			.isEqualTo(200);
		assertThat(addressesInTheTrace()).containsExactly("127.0.0.1");
	}

	@Test
	void believesNobodyAboutTlsOrTheHost() {
		HttpResponse<String> answer = nobody().get("/board", "Accept", Caller.BROWSER, "X-Forwarded-Proto", "https",
				"X-Forwarded-Host", "evil.example", "X-Forwarded-Port", "443", "Forwarded",
				"host=evil.example;proto=https");
		assertThat(answer.headers().firstValue("Location").orElse("")).doesNotContain("evil", "https");
		assertThat(answer.headers().firstValue("Strict-Transport-Security")).isEmpty();
		assertThat(answer.headers().allValues("Set-Cookie")).noneMatch((cookie) -> cookie.contains("Secure"));
	}

	/** Forty tries from forty made-up addresses. */
	@Test
	void slowsTheAccountDownWhateverTheAddress() {
		int looked = 0;
		for (int i = 0; i < 40; i++) {
			Caller caller = nobody();
			caller.get("/sign-in");
			HttpResponse<String> answer = caller.sendAs("POST", "/sign-in",
					java.net.http.HttpRequest.BodyPublishers.ofString("username=" + Caller.encoded(this.annName)
							+ "&password=wrong&_csrf=" + Caller.encoded(caller.token())),
					"Content-Type", "application/x-www-form-urlencoded", "X-Forwarded-For", "198.51.100." + i);
			looked += caller.location(answer).equals("/sign-in?failed") ? 1 : 0;
		}
		assertThat(looked).isEqualTo(5);
	}

	/** The network's delay is that of the connection: many names, one machine. */
	@Test
	void slowsTheMachineDownThatTriesManyNames() {
		Set<String> answers = new HashSet<>();
		for (int i = 0; i < 30; i++) {
			Caller caller = nobody();
			caller.get("/sign-in");
			answers.add(caller.location(caller.sendAs("POST", "/sign-in",
					java.net.http.HttpRequest.BodyPublishers.ofString(
							"username=" + PersonId.next() + "&password=wrong&_csrf=" + Caller.encoded(caller.token())),
					"Content-Type", "application/x-www-form-urlencoded", "X-Forwarded-For", "198.51.100." + i)));
		}
		assertThat(answers).anyMatch((to) -> to.startsWith("/sign-in?wait="));
	}

	@Test
	void takesNothingFromHeadersThatAreNone() throws IOException {
		for (String header : List.of("X-Forwarded-For: 1.2.3.4\r\n continued", "X-Forwarded-For : 1.2.3.4",
				"X-Forwarded-For: 1.2.3.4\u0000", "X-Forwarded-For: " + "1".repeat(64 * 1024),
				"Forwarded: for=" + "1".repeat(64 * 1024), "X-Forwarded-For: 1.2.3.4\rSet-Cookie: a=b")) {
			String answer = RawSocket.answer(this.port,
					"GET /sign-in HTTP/1.1\r\nHost: localhost\r\n" + header + "\r\nConnection: close\r\n\r\n");
			assertThat(answer).as(header).matches("(?s)HTTP/1\\.1 [24].*").doesNotContain("a=b", "1.2.3.4", "11111");
		}
	}

	@Test
	@EnabledOnOs(OS.LINUX)
	void listensOnThisMachineOnly() throws IOException {
		new Socket("127.0.0.1", this.port).close();
		assertThatThrownBy(() -> new Socket("127.0.0.2", this.port).close()).isInstanceOf(ConnectException.class);
	}

	private List<String> addressesInTheTrace() {
		String page = signedIn(this.annName).get("/sharing").body();
		return java.util.regex.Pattern.compile("data-label=\"From\"[^>]*><span>([^<]*)</span>")
			.matcher(page)
			.results()
			.map((found) -> found.group(1))
			.distinct()
			.toList();
	}

	@Test
	void saysWhetherTheConnectionIsInTheClear() {
		assertThat(nobody().get("/sign-in").body()).doesNotContain("not encrypted");
	}

}
