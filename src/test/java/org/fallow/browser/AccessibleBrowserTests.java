package org.fallow.browser;

import java.util.List;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.team.Athlete;
import org.fallow.team.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Every page keeps the rules of WCAG 2.0 to 2.2, A and AA, that axe-core can check, light
 * and dark, at a telephone and at a desk.
 */
class AccessibleBrowserTests extends OnRealPages {

	private static final List<String> STANDARDS = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a",
			"wcag22aa");

	@RegisterExtension
	static final Browser BROWSER = Browser.phone();

	@Autowired
	private Mornings mornings;

	@Test
	void letsEverybodyReadTheSignIn() {
		Visitor nobody = visitor(BROWSER);
		check(nobody, "/sign-in", "/sign-in?failed", "/sign-in?expired", "/sign-in?signed-out", "/sign-in?wait=300",
				"/forgotten");
		BROWSER.expectError("404");
		check(nobody, "/reset/guessed");
	}

	@Test
	void letsEverybodyReadAnAthletesPages() {
		Visitor athlete = signedIn(BROWSER, this.annName);
		check(athlete, "/today", "/morning", "/mornings", "/session", "/sessions", "/programme", "/return-path",
				"/report", "/account", "/password");
		BROWSER.expectError("404");
		BROWSER.expectError("403");
		check(athlete, "/nowhere", "/board");
	}

	/** The address is one word, longer than a phone is wide. */
	@Test
	void letsEverybodyReadTheAddressOfACalendar() {
		Visitor athlete = signedIn(BROWSER, this.annName);
		check(athlete, "/sharing", "/calendar");
		athlete.press("main form button.primary");
		assertThat(athlete.all("main code")).hasSize(1);
		checkHere("/calendar with an address");
		check(athlete, "/calendar");
		assertThat(athlete.all("main code")).isEmpty();
	}

	@Test
	void letsEverybodyReadAnIllAthletesPages() {
		save(this.ann, Symptom.FEVERISH);
		Visitor athlete = signedIn(BROWSER, this.annName);
		check(athlete, "/today", "/morning", "/return-path", "/sessions", "/thread");
	}

	@Test
	void letsEverybodyReadRefer() {
		save(this.ann, Symptom.CHEST_PAIN);
		Visitor athlete = signedIn(BROWSER, this.annName);
		check(athlete, "/today", "/return-path");
	}

	@Test
	void letsEverybodyReadARefusedForm() {
		Visitor athlete = signedIn(BROWSER, this.annName);
		athlete.go("/report");
		athlete.press("form button.primary");
		checkHere("/report refused");
		athlete.go("/morning");
		athlete.type("rhr", "221");
		athlete.press("#unwell button.primary");
		checkHere("/morning refused");
		athlete.go("/morning");
		athlete.tick("symptom.CHEST_PAIN", "SEVERE");
		athlete.press("#unwell button.primary");
		athlete.sees("slip.title");
		checkHere("/slip");
	}

	@Test
	void letsEverybodyReadACoachsPages() {
		save(this.ann, Symptom.CHEST_PAIN);
		Athlete bob = this.runners.athlete(this.team, "Bob Birch", "Road");
		save(bob, Symptom.FEVERISH);
		this.runners.athlete(this.team, "Cyd Cole", "Road");
		Visitor coach = signedIn(BROWSER, this.coachName);
		String page = "/athletes/" + this.ann.id().value();
		check(coach, "/board", "/board?day=" + Runners.TODAY.minusDays(3), page, page + "/clearance",
				page + "/decision", page + "/return-path", page + "/sessions", page + "/words", page + "/thread",
				"/roll", "/brief", "/programme", "/people", "/rules", "/import", "/style");
	}

	@Test
	void letsEverybodyReadTheRules() {
		save(this.ann, Symptom.FEVERISH);
		Visitor coach = signedIn(BROWSER, this.coachName);
		coach.go("/rules");
		coach.press("td form button");
		String draft = coach.path();
		coach.type("/opening/feverCelsius", "39");
		coach.press("form button.primary");
		checkHere("a refused draft");
		check(coach, draft, draft + "/trial", draft + "/adopt", "/rules");
		coach.press("main tbody th a");
		checkHere("a version");
	}

	private void check(Visitor visitor, String... paths) {
		for (String path : paths) {
			visitor.go(path);
			assertThat(visitor.all("main h1")).as(path).hasSize(1);
			checkHere(path);
		}
	}

	private void checkHere(String what) {
		for (String look : List.of("light", "dark")) {
			BROWSER.prefer(look);
			BROWSER.show(look.equals("light") ? Browser.Size.PHONE : Browser.Size.DESK);
			assertThat(wider()).as("wider than its window: " + what).isEqualTo(false);
			assertThat(broken()).as(what + ", " + look).isEmpty();
		}
		BROWSER.prefer("light");
		BROWSER.show(Browser.Size.PHONE);
	}

	private static Object wider() {
		return BROWSER.driver()
			.executeScript("return document.documentElement.scrollWidth > document.documentElement.clientWidth");
	}

	private static List<String> broken() {
		Results results = new AxeBuilder().withTags(STANDARDS).analyze(BROWSER.driver());
		assertThat(results.isErrored()).as("axe ran").isFalse();
		assertThat(results.getPasses()).as("rules that axe could apply").isNotEmpty();
		return results.getViolations().stream().map(AccessibleBrowserTests::describe).toList();
	}

	private static String describe(Rule rule) {
		return rule.getId() + ": " + rule.getNodes().stream().map((node) -> node.getHtml() + node.getTarget()).toList();
	}

	private void save(Athlete athlete, Symptom symptom) {
		this.mornings.save(athlete.id(),
				NewMorning.feeling(Runners.TODAY, new ReportedSymptom(symptom, Severity.SEVERE, null)),
				Submission.page(athlete.id(), Role.ATHLETE, Submission.newRequestId()));
	}

}
