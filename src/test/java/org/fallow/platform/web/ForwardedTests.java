package org.fallow.platform.web;

import java.net.http.HttpResponse;
import java.util.List;
import java.util.regex.Pattern;

import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Behind named proxies: what they say counts, and what stands before it in the same
 * header does not.
 */
@TestPropertySource(properties = "fallow.proxies=127.0.0.1,::1")
class ForwardedTests extends OverHttp {

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "203.0.113.7|203.0.113.7", "evil, 203.0.113.7|203.0.113.7",
					"198.51.100.1, 203.0.113.7|203.0.113.7", "203.0.113.7, 127.0.0.1|203.0.113.7",
					"2001:DB8::7|2001:db8:0:0:0:0:0:7", "fe80::1%eth0|fe80:0:0:0:0:0:0:1",
					"[2001:db8::7]:4711|2001:db8:0:0:0:0:0:7", "203.0.113.7:4711|203.0.113.7",
					"203.0.113.7, evil|127.0.0.1", "unknown|127.0.0.1", "<b>Cay</b>|127.0.0.1", "010.0.0.1|127.0.0.1",
					"203.0.113.7,|127.0.0.1", "::ffff:203.0.113.7|203.0.113.7" })
	void notesTheVisitorsAddress(String header, String noted) {
		Athlete ann = this.people.addAthlete(this.team.id(), NewAthlete.named("Ann Ashe"));
		Caller coach = signedIn(this.coachName);
		assertThat(coach.get("/athletes/" + ann.id(), "Accept", Caller.BROWSER, "X-Forwarded-For", header).statusCode())
			.isEqualTo(200);
		assertThat(noted(signedIn(open(ann.id())).get("/sharing").body())).containsExactly(noted);
	}

	private static List<String> noted(String page) {
		return Pattern.compile("data-label=\"From\"[^>]*><span>([^<]*)</span>")
			.matcher(page)
			.results()
			.map((found) -> found.group(1))
			.distinct()
			.toList();
	}

	@Test
	void believesTheProxyAboutTlsAndTheHost() {
		HttpResponse<String> answer = nobody().get("/board", "Accept", Caller.BROWSER, "X-Forwarded-Proto", "https",
				"X-Forwarded-Host", "fallow.club.example", "X-Forwarded-Port", "8443");
		assertThat(answer.headers().firstValue("Location")).hasValue("https://fallow.club.example:8443/sign-in");
		assertThat(answer.headers().allValues("Set-Cookie")).allMatch((cookie) -> cookie.contains("Secure"));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "https, http|a.example|443", "evil|<b>|0", "http|a b|99999", "HTTPS,|x/../y|-1" })
	void takesNothingThatIsNone(String proto, String host, String port) {
		HttpResponse<String> answer = nobody().get("/board", "Accept", Caller.BROWSER, "X-Forwarded-Proto", proto,
				"X-Forwarded-Host", host, "X-Forwarded-Port", port);
		assertThat(answer.statusCode()).isEqualTo(302);
		assertThat(answer.headers().firstValue("Location").orElse("")).startsWith("http://")
			.endsWith("/sign-in")
			.doesNotContain("<", "..", "99999", "-1");
	}

	/** Or the address of one visitor would be taken for the next one's. */
	@Test
	void forgetsWhatWasSaidWithTheNextRequestOfTheConnection() {
		Athlete ann = this.people.addAthlete(this.team.id(), NewAthlete.named("Ann Ashe"));
		Caller coach = signedIn(this.coachName);
		coach.get("/athletes/" + ann.id(), "Accept", Caller.BROWSER, "X-Forwarded-For", "203.0.113.7");
		coach.get("/athletes/" + ann.id());
		assertThat(noted(signedIn(open(ann.id())).get("/sharing").body())).containsExactly("127.0.0.1", "203.0.113.7");
	}

	@Test
	void warnsAtTheSignInThatTheConnectionIsInTheClear() {
		String warning = "not encrypted";
		assertThat(nobody().get("/sign-in").body()).doesNotContain(warning);
		assertThat(nobody().get("/sign-in", "Accept", Caller.BROWSER, "X-Forwarded-For", "192.168.1.20").body())
			.contains(warning);
		assertThat(nobody()
			.get("/sign-in", "Accept", Caller.BROWSER, "X-Forwarded-For", "192.168.1.20", "X-Forwarded-Proto", "https")
			.body()).doesNotContain(warning);
	}

}
