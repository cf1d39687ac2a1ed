package org.fallow.browser;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.JavascriptExecutor;

import static org.assertj.core.api.Assertions.assertThat;

/** Ann reports an illness on a telephone; her coach has a word with her. */
class ContactBrowserTests extends OnRealPages {

	@RegisterExtension
	static final Browser DESK = Browser.desk();

	@RegisterExtension
	static final Browser PHONE = Browser.phone();

	@Test
	void bringsACoachsWordToTheAthlete() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/report");
		athlete.tick("kind", "FEVER");
		athlete.tick("worst", "6");
		athlete.press("form button.primary");
		assertThat(athlete.path()).isEqualTo("/today");
		Visitor coach = signedIn(DESK, this.coachName);
		coach.go("/board");
		assertThat(coach.find(".needs").getText()).contains(coach.say("needs.title"), "Ann Ashe",
				coach.say("matter.NEW_ILLNESS"));
		coach.find(".needs details summary").click();
		coach.type("note", "Stay in bed till Friday.");
		coach.tick("share", "true");
		coach.press(".needs button[value='CONTACTED']");
		coach.sees("words.saved.shared", "Ann Ashe");
		coach.sees("needs.none");
		athlete.go("/today");
		athlete.sees("today.words");
		assertThat(athlete.text()).contains("Cay Coach", "Stay in bed till Friday.");
		athlete.press(".actions a[href$='/thread']");
		athlete.sees("thread.not-at-once.head");
		athlete.type("body", "Thank you.");
		athlete.press("form[action$='/thread'] button.primary");
		athlete.sees("thread.sent");
		coach.go(coach.link((name) -> name.equals("Ann Ashe")) + "/thread");
		assertThat(coach.text()).contains("Thank you.", "Ann Ashe");
	}

	/** Nothing is wider than a telephone or a desk, not even one long word. */
	@Test
	void fitsOnATelephone() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/report");
		athlete.tick("kind", "FEVER");
		athlete.tick("worst", "6");
		athlete.press("form button.primary");
		assertThat(athlete.path()).isEqualTo("/today");
		athlete.go("/thread");
		athlete.type("body", "w".repeat(300));
		athlete.press("form[action$='/thread'] button.primary");
		fits(athlete);
		Visitor coach = signedIn(PHONE, this.coachName);
		coach.go("/board");
		fits(coach);
		coach.find(".needs details summary").click();
		fits(coach);
		coach.go(coach.link((name) -> name.equals("Ann Ashe")) + "/words");
		fits(coach);
	}

	private static void fits(Visitor visitor) {
		Object wide = ((JavascriptExecutor) visitor.browser().driver())
			.executeScript("return document.documentElement.scrollWidth - document.documentElement.clientWidth");
		assertThat(wide).as(visitor.path()).isEqualTo(0L);
	}

}
