package org.fallow.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

import org.fallow.platform.DatabaseTest;
import org.fallow.account.DemoAccounts;
import org.fallow.team.Role;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.OutputType;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;
import org.springframework.test.context.ActiveProfiles;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Takes the pictures of the documents from the demo squad. Not part of the ordinary
 * build: {@code mvn test -Dgroups=pictures -DexcludedGroups=}.
 */
@Tag("pictures")
@DatabaseTest(webEnvironment = WebEnvironment.RANDOM_PORT)
@ActiveProfiles("demo")
@Import(PicturesTests.FixedMorning.class)
class PicturesTests {

	private static final Path FOLDER = Path.of("docs", "pictures");

	private static final long LARGEST_BYTES = 200_000;

	@RegisterExtension
	static final Browser BROWSER = Browser.desk();

	@Autowired
	private DemoAccounts accounts;

	@Autowired
	private MessageSource messages;

	@LocalServerPort
	private int port;

	@Test
	void takesTheCoachsPages() throws IOException {
		Visitor coach = visitor();
		take(coach, "/sign-in", "sign-in");
		signIn(coach, first(Role.COACH));
		take(coach, "/board", "board");
		take(coach, "/board?clearance=EASY_ONLY", "board-filtered");
		take(coach, "/board?day=2026-03-11", "board-past");
		takeOf(coach, "Nkechi", "", "athlete-refer");
		takeOf(coach, "Nkechi", "/clearance", "clearance");
		takeOf(coach, "Nkechi", "/decision", "decision");
		takeOf(coach, "Priyanka", "", "athlete");
		at(coach, "#chart-head", "athlete-chart");
		at(coach, "#gate-head", "athlete-gate");
		takeOf(coach, "Priyanka", "/return-path", "return-path-coach");
		takeOf(coach, "Priyanka", "/sessions", "sessions-coach");
		take(coach, "/roll?day=2026-07-11", "roll");
		take(coach, "/programme", "programme");
		take(coach, "/brief", "brief");
		take(coach, "/people", "people");
		at(coach, "#invite-head", "people-invite");
		take(coach, "/club", "club");
		take(coach, "/account", "account");
		take(coach, "/rules", "rules");
		take(coach, "/import", "import");
		BROWSER.prefer("dark");
		take(coach, "/board", "board-dark");
		BROWSER.prefer("light");
	}

	@Test
	void takesTheAthletesPages() throws IOException {
		Visitor athlete = visitor();
		signIn(athlete, named("Priyanka"));
		take(athlete, "/today", "today");
		take(athlete, "/return-path", "return-path");
		take(athlete, "/morning", "morning");
		at(athlete, "#unwell-head", "morning-unwell");
		take(athlete, "/session", "session");
		take(athlete, "/report", "report");
		take(athlete, "/sessions", "sessions");
		at(athlete, "#log-head", "sessions-log");
		take(athlete, "/calendar", "calendar");
		take(athlete, "/mornings?weeks=26", "mornings");
		take(athlete, "/thread", "thread");
		take(athlete, "/sharing", "sharing");
		at(athlete, "#trace-head", "sharing-trace");
		athlete.go("/morning");
		athlete.tick("symptom.CHEST_PAIN", "SEVERE");
		athlete.press("#unwell button.primary");
		here("morning-asks-again");
		BROWSER.prefer("dark");
		take(athlete, "/today", "today-dark");
		BROWSER.prefer("light");
		BROWSER.expectError("404");
		take(athlete, "/nowhere", "no-such-page");
	}

	@Test
	void takesThePagesOfAnAthleteOnHoldAndOfAHealthyOne() throws IOException {
		Visitor athlete = visitor();
		signIn(athlete, named("Nkechi"));
		take(athlete, "/today", "today-refer");
		take(athlete, "/return-path", "return-path-refer");
		athlete.press("form.who button");
		signIn(athlete, named("Linh"));
		take(athlete, "/today", "today-well");
		take(athlete, "/return-path", "return-path-none");
	}

	@Test
	void takesAnInvitation() throws IOException {
		Visitor coach = visitor();
		signIn(coach, first(Role.COACH));
		coach.go("/people");
		coach.type("whom", "Eve Elm");
		coach.press("form[action='/people/invitations'] button.primary");
		String link = coach.find("#invited-link").getDomProperty("value");
		coach.press("form.who button");
		take(coach, link.substring(link.indexOf("/join/")), "join");
		at(coach, "form.sheet", "join-form");
		BROWSER.expectError("410");
		take(coach, "/join/gone", "join-gone");
	}

	private Visitor visitor() {
		return new Visitor(BROWSER, this.port, this.messages);
	}

	private static void signIn(Visitor visitor, DemoAccounts.DemoAccount account) {
		visitor.signIn(account.username(), account.password());
	}

	private DemoAccounts.DemoAccount first(Role role) {
		return this.accounts.list().stream().filter((account) -> account.role() == role).findFirst().orElseThrow();
	}

	private DemoAccounts.DemoAccount named(String start) {
		return this.accounts.list().stream().filter((one) -> one.name().startsWith(start)).findFirst().orElseThrow();
	}

	private static void takeOf(Visitor coach, String name, String page, String picture) throws IOException {
		coach.go("/board");
		String path = coach.link(named -> named.startsWith(name));
		take(coach, path + page, picture);
	}

	private static void take(Visitor visitor, String path, String picture) throws IOException {
		visitor.go(path);
		here(picture);
	}

	/** Pictures of the part of the page that begins at an element. */
	private static void at(Visitor visitor, String selector, String picture) throws IOException {
		for (Browser.Size size : Browser.Size.values()) {
			BROWSER.show(size);
			BROWSER.driver().executeScript("arguments[0].scrollIntoView({block: 'start'})", visitor.find(selector));
			save(picture, size);
		}
	}

	private static void here(String picture) throws IOException {
		for (Browser.Size size : Browser.Size.values()) {
			BROWSER.show(size);
			BROWSER.driver().executeScript("window.scrollTo(0, 0)");
			save(picture, size);
		}
	}

	private static void save(String picture, Browser.Size size) throws IOException {
		BROWSER.driver()
			.executeAsyncScript("const done = arguments[0]; requestAnimationFrame(() => setTimeout(done, 400))");
		byte[] png = BROWSER.driver().getScreenshotAs(OutputType.BYTES);
		assertThat((long) png.length).as(picture).isBetween(1_000L, LARGEST_BYTES);
		Files.createDirectories(FOLDER);
		Files.write(FOLDER.resolve(picture + "-" + size.width() + ".png"), png);
	}

	/** Always the same morning, so that pictures change only with the pages. */
	@TestConfiguration(proxyBeanMethods = false)
	static class FixedMorning {

		@Bean
		@Primary
		Clock fixedMorning() {
			return Clock.fixed(Instant.parse("2026-07-08T08:00:00Z"), ZoneOffset.UTC);
		}

	}

}
