package org.fallow.platform.web;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import biweekly.Biweekly;
import org.fallow.access.Secret;
import org.fallow.platform.web.LogOfTest.Line;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The address of a calendar over HTTP: it opens without a sign-in, once ended it is like
 * any other, and it is written down nowhere.
 */
class CalendarAddressTests extends OverHttp {

	private static final Pattern SECRET = Pattern.compile("/calendar/([A-Za-z0-9_-]{43})\\.ics");

	@Autowired
	private FlywayConnectionDetails owner;

	private Caller ann;

	@BeforeEach
	void signIn() {
		this.ann = signedIn(open(this.stranger.id()));
	}

	@Test
	void opensWithoutASignInOrASession() {
		HttpResponse<String> answer = fetch(made());
		assertThat(answer.statusCode()).isEqualTo(200);
		assertThat(answer.headers().firstValue("Content-Type")).hasValueSatisfying(
				(type) -> assertThat(type.toLowerCase(Locale.ROOT)).isEqualTo("text/calendar;charset=utf-8"));
		assertThat(answer.headers().allValues("Set-Cookie")).isEmpty();
		assertThat(answer.headers().firstValue("Cache-Control"))
			.hasValueSatisfying((value) -> assertThat(value).contains("no-store"));
		assertThat(Biweekly.parse(answer.body()).all()).hasSize(1);
	}

	/** Also for a program that kept the cookie of a session that ended. */
	@Test
	void opensWithACookieThatIsWorthNothing() {
		String path = "/calendar/" + made() + ".ics";
		assertThat(nobody().get(path, "Accept", "*/*", "Cookie", "SESSION=eHh4").statusCode()).isEqualTo(200);
		assertThat(nobody().sendAs("HEAD", path, BodyPublishers.noBody(), "Accept", "*/*").statusCode()).isEqualTo(200);
	}

	/** What is below the page is for programs; the page and its forms are not. */
	@Test
	void keepsThePageForWhoIsSignedIn() {
		Caller caller = nobody();
		assertThat(caller.location(caller.get("/calendar"))).isEqualTo("/sign-in");
		caller.get("/sign-in");
		for (String path : List.of("/calendar/new", "/calendar/revoke")) {
			assertThat(caller.location(caller.post(path, Map.of()))).as(path).isEqualTo("/sign-in");
		}
	}

	@Test
	void showsTheAddressOnce() {
		assertThat(this.ann.get("/calendar").body()).contains("There is no address of your calendar now.")
			.contains("Please keep in mind")
			.doesNotContainPattern(SECRET);
		made();
		assertThat(this.ann.get("/calendar").body()).contains("An address works since", "The earlier address stops")
			.doesNotContainPattern(SECRET);
		assertThat(this.ann.get("/sharing").body()).contains("href=\"/calendar\"");
	}

	@Test
	void endsTheEarlierAddressWithANewOne() {
		String first = made();
		String second = made();
		assertThat(second).isNotEqualTo(first);
		assertThat(fetch(first).statusCode()).isEqualTo(404);
		assertThat(fetch(second).statusCode()).isEqualTo(200);
	}

	@Test
	void endsAnAddressForGood() {
		String secret = made();
		HttpResponse<String> answer = this.ann.post("/calendar/revoke", Map.of());
		assertThat(this.ann.location(answer)).isEqualTo("/calendar");
		assertThat(this.ann.get("/calendar").body()).contains("The address no longer works.", "There is no address");
		assertThat(fetch(secret).statusCode()).isEqualTo(404);
		String another = made();
		assertThat(fetch(secret).statusCode()).isEqualTo(404);
		assertThat(fetch(another).statusCode()).isEqualTo(200);
	}

	@Test
	void answersEveryWrongAddressAlike() {
		String ended = made();
		String real = made();
		List<String> wrong = new ArrayList<>(List.of(ended, Secret.draw().text(), new Secret(real).hash(), real + "A",
				real.substring(1), real.toLowerCase(Locale.ROOT), new StringBuilder(real).reverse().toString(), "x",
				"'", "%27%20or%20true--", this.stranger.id().toString(), real + ".ics"));
		for (int at = 0; at < real.length(); at++) {
			char other = (real.charAt(at) == 'q') ? 'r' : 'q';
			wrong.add(real.substring(0, at) + other + real.substring(at + 1));
		}
		String unknown = masked(fetch("x".repeat(43)));
		for (String one : wrong) {
			assertThat(masked(fetch(one))).as(one).isEqualTo(unknown).startsWith("404");
		}
		assertThat(fetch(real).statusCode()).isEqualTo(200);
	}

	@Test
	void writesTheAddressDownNowhere() {
		List<String> secrets = new ArrayList<>();
		try (LogOfTest log = LogOfTest.listen()) {
			secrets.add(made());
			secrets.add(made());
			secrets.add(Secret.draw().text());
			for (String secret : secrets) {
				fetch(secret);
				String path = "/calendar/" + secret;
				for (String asked : List.of(path, path + ".ics", path + ".ics/", path + ".ics;x=" + secret,
						path + ".ics?" + secret + "=" + secret, path + ".ics/%00", "/calendar//" + secret + ".ics",
						path + ".ics%2f..", path + "/", path + "/x")) {
					nobody().get(asked);
					nobody().get(asked, "Accept", "text/calendar");
				}
				nobody().sendAs("POST", path + ".ics", BodyPublishers.noBody());
				this.ann.get(path);
				nobody().sendAs("PROPFIND", path + ".ics", BodyPublishers.noBody());
			}
			this.ann.post("/calendar/revoke", Map.of());
			fetch(secrets.get(1));
			assertThat(log.all()).extracting(Line::text)
				.anyMatch((text) -> text.contains("404 to GET /calendar/{secret}.ics"));
			for (String secret : secrets) {
				assertThat(log.all()).extracting(Line::text).noneMatch((text) -> text.contains(secret));
			}
		}
		for (String secret : secrets) {
			assertThat(tablesWith(secret)).as("kept as a hash only").isEmpty();
		}
		assertThat(tablesWith(new Secret(secrets.get(1)).hash())).containsExactly("calendar_feed");
	}

	private String made() {
		this.ann.get("/calendar");
		HttpResponse<String> answer = this.ann.post("/calendar/new", Map.of());
		assertThat(answer.statusCode()).isEqualTo(200);
		assertThat(answer.body()).doesNotContain("??");
		Matcher found = SECRET.matcher(answer.body());
		assertThat(found.find()).isTrue();
		return found.group(1);
	}

	private HttpResponse<String> fetch(String secret) {
		return nobody().get("/calendar/" + secret + ".ics", "Accept", "*/*");
	}

	/** Without the id to quote, which differs each time. */
	private static String masked(HttpResponse<String> answer) {
		return answer.statusCode() + " " + answer.body().replaceAll("[0-9a-f-]{36}", "ID");
	}

	/** Read as the owner of the tables; what a session keeps is bytes. */
	private List<String> tablesWith(String text) {
		JdbcClient jdbc = JdbcClient.create(new DriverManagerDataSource(this.owner.getJdbcUrl(),
				this.owner.getUsername(), this.owner.getPassword()));
		return jdbc
			.sql("select c.relname from pg_class c where c.relnamespace = 'public'::regnamespace and c.relkind in "
					+ "('r', 'p') order by 1")
			.query(String.class)
			.list()
			.stream()
			.filter((table) -> jdbc
				.sql("select exists (select 1 from " + table + " t where t::text like ? or t::text like ?)")
				.params("%" + text + "%", "%" + java.util.HexFormat.of().formatHex(text.getBytes()) + "%")
				.query(Boolean.class)
				.single())
			.toList();
	}

}
