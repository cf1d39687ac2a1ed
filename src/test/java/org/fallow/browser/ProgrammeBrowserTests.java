package org.fallow.browser;

import java.time.Duration;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.team.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A coach writes a week, the morning is entered, and the roll that stands open changes.
 */
class ProgrammeBrowserTests extends OnRealPages {

	@RegisterExtension
	static final Browser DESK = Browser.desk();

	@RegisterExtension
	static final Browser PHONE = Browser.phone();

	@Autowired
	private Mornings mornings;

	@Test
	void changesTheRollThatStandsOpen() {
		Visitor coach = signedIn(DESK, this.coachName);
		write(coach);
		coach.sees("programme.saved", "Mon 16 Mar");
		coach.go("/roll");
		assertThat(roll(coach)).contains("Ann Ashe", coach.say("version.NOT_ASSESSED"));
		enter(NewMorning.measured(Runners.TODAY, Method.STRAP, Posture.LYING, 50.0, 70.0), 0);
		await(coach, "version.AS_PROGRAMMED");
		enter(NewMorning.feeling(Runners.TODAY, new ReportedSymptom(Symptom.FEVERISH, Severity.MODERATE, null)), 1);
		await(coach, "version.REST");
		coach.go("/brief");
		assertThat(coach.text()).contains("Ann Ashe", coach.say("brief.ill"));
	}

	/** All of it through pages: the coach's at a desk, Ann's on a telephone. */
	@Test
	void showsTheLoggedRunAndTheEditedWeekOnTheRollThatStandsOpen() {
		Visitor coach = signedIn(DESK, this.coachName);
		write(coach);
		coach.go("/roll");
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/session");
		athlete.type("minutes", "30");
		athlete.tick("rpe", "3");
		athlete.press("form button.primary");
		athlete.sees("session.stored");
		awaitText(coach, coach.say("roll.ran", 30));
		Visitor colleague = signedIn(PHONE, this.coachName);
		colleague.go("/programme");
		colleague.type("parts0", "20 min easy; 4 x 3 min threshold, 90 s between; 10 min easy");
		colleague.press("#programme button.primary");
		colleague.sees("programme.saved", "Mon 16 Mar");
		awaitText(coach, "4 x 3 min threshold");
	}

	@Test
	void movesASessionByKeyboard() {
		Visitor coach = signedIn(DESK, this.coachName);
		write(coach);
		coach.find(".session-row .move-later").sendKeys(" ");
		assertThat(new Select(coach.find("[name='day0']")).getFirstSelectedOption().getAttribute("value"))
			.isEqualTo("4");
		coach.press("#programme button.primary");
		assertThat(coach.find(".session-row [name='day0']").getAttribute("value")).isEqualTo("4");
		coach.press("form[action$='/back'] button");
		coach.sees("programme.taken-back", "Mon 16 Mar");
		assertThat(coach.find(".session-row [name='day0']").getAttribute("value")).isEqualTo("3");
	}

	@Test
	void saysWhatItCannotRead() {
		Visitor coach = signedIn(DESK, this.coachName);
		coach.go("/programme");
		coach.type("parts0", "40 min quick");
		coach.press("#programme button.primary");
		coach.sees("parts.unreadable", 1, "40 min quick");
		assertThat(coach.find("[name='parts0']").getAttribute("value")).isEqualTo("40 min quick");
	}

	@Test
	void showsAnAthleteTheWeek() {
		Visitor coach = signedIn(DESK, this.coachName);
		write(coach);
		Visitor athlete = signedIn(DESK, this.annName);
		athlete.go("/sessions");
		athlete.sees("version.NOT_ASSESSED");
		athlete.find("details.anchors summary").click();
		athlete.type("weekMinutes", "200");
		athlete.press("details.anchors button");
		athlete.sees("statement.both");
		athlete.type("longMinutes", "80");
		athlete.press("details.anchors button");
		athlete.sees("statement.saved");
		athlete.go("/programme");
		assertThat(athlete.text()).contains("6 x 3 min vo2max");
		assertThat(athlete.all("#programme")).isEmpty();
	}

	private static void write(Visitor coach) {
		coach.go("/programme");
		coach.choose("day0", "3");
		coach.choose("kind0", "KEY_SESSION");
		coach.type("parts0", "15 min easy; 6 x 3 min vo2max, 90 s between; 10 min easy");
		coach.press("#programme button.primary");
	}

	private void enter(NewMorning morning, int revision) {
		CurrentPerson.runAs(this.ann.id(),
				() -> assertThat(this.mornings.save(this.ann.id(), morning.basedOn(revision),
						Submission.page(this.ann.id(), Role.ATHLETE, UUID.randomUUID())))
					.isInstanceOf(Saved.Stored.class));
	}

	private static String roll(Visitor coach) {
		return coach.find(".roll-table").getText();
	}

	/**
	 * The page asks every fifteen seconds, and puts what it gets in the place of what was
	 * there.
	 */
	private static void awaitText(Visitor coach, String text) {
		new WebDriverWait(DESK.driver(), Duration.ofSeconds(40)).ignoring(WebDriverException.class)
			.until((driver) -> coach.find("#roll").getText().contains(text));
	}

	private static void await(Visitor coach, String version) {
		new WebDriverWait(DESK.driver(), Duration.ofSeconds(40)).ignoring(WebDriverException.class)
			.until((driver) -> roll(coach).contains(coach.say(version)));
	}

}
