package org.fallow.browser;

import java.time.Duration;

import org.fallow.access.CurrentPerson;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.team.Athlete;
import org.fallow.team.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.support.ui.WebDriverWait;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The board's days and filters, an illness reported, and the ends of a sign-in.
 */
class PagesBrowserTests extends OnRealPages {

	@RegisterExtension
	static final Browser PHONE = Browser.phone();

	@RegisterExtension
	static final Browser DESK = Browser.desk();

	@Autowired
	private Mornings mornings;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	@Test
	void showsTheBoardAsOfAPastDay() {
		Visitor coach = signedIn(DESK, this.coachName);
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.NOT_ASSESSED"));
		coach.type("day", Runners.TODAY.minusDays(1).toString());
		coach.press("form.day-picker button");
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.FULL_TRAINING"));
		assertThat(coach.all("p.past")).hasSize(1);
		coach.press("p.past a");
		assertThat(coach.all("p.past")).isEmpty();
		coach.press("a[rel='prev']");
		assertThat(coach.all("p.past")).hasSize(1);
	}

	@Test
	void filtersTheBoardByClearanceAndGroup() {
		Athlete bob = this.runners.athlete(this.team, "Bob Birch", "Road");
		save(bob, NewMorning.feeling(Runners.TODAY, new ReportedSymptom(Symptom.CHEST_PAIN, Severity.SEVERE, null)));
		Visitor coach = signedIn(DESK, this.coachName);
		assertThat(coach.all("table.board tbody tr").get(0).getText()).contains("Bob Birch");
		coach.choose("clearance", "NOT_ASSESSED");
		await(coach, 1);
		assertThat(coach.row("Ann Ashe")).isNotEmpty();
		assertThat(coach.path()).contains("clearance=NOT_ASSESSED");
		coach.go("/board?clearance=REST");
		coach.sees("board.none-match");
		coach.go("/board");
		coach.find("select[name='group']").sendKeys("Road");
		await(coach, 1);
		assertThat(coach.row("Bob Birch")).isNotEmpty();
	}

	@Test
	void takesAReportOfAnIllness() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.press("a[href='/report'].grave");
		athlete.tick("kind", "FEVER");
		athlete.press("form button.primary");
		assertThat(athlete.all("#worst-problem")).hasSize(1);
		athlete.tick("worst", "6");
		athlete.press("form button.primary");
		assertThat(athlete.path()).isEqualTo("/today");
		athlete.sees("clearance.REST");
		athlete.press("a[href='/return-path']");
		athlete.sees("stage.ILL");
		Visitor coach = signedIn(DESK, this.coachName);
		assertThat(coach.row("Ann Ashe")).contains(coach.say("stage.ILL.short"));
	}

	@Test
	void logsASession() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/session");
		athlete.type("minutes", "40");
		athlete.tick("activity", "RUN");
		athlete.tick("rpe", "4");
		athlete.choose("intensity", "EASY");
		athlete.press("form button.primary:not([name])");
		assertThat(athlete.path()).isEqualTo("/today");
		athlete.sees("session.stored");
		assertThat(count("session_log")).isOne();
	}

	@Test
	void storesOnceWhenTheButtonIsPressedTwice() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.type("rhr", "50");
		PHONE.driver()
			.executeScript("const button = document.querySelector(\"button[name='allWell']\");"
					+ "const form = new FormData(button.form, button);"
					+ "return fetch(button.form.action, { method: 'POST', body: new URLSearchParams(form) })");
		athlete.press("button[name='allWell']");
		assertThat(athlete.path()).isEqualTo("/today");
		assertThat(revisionsOfToday()).isOne();
	}

	@Test
	void storesOnceAfterGoingBackAndTellsWhenSomethingElseIsSent() {
		Visitor athlete = signedIn(PHONE, this.annName);
		MainJobBrowserTests.enterWell(athlete, "50", "70");
		PHONE.driver().navigate().back();
		assertThat(athlete.path()).isEqualTo("/morning");
		boolean loadedAnew = athlete.text().contains(athlete.say("morning.corrects"));
		MainJobBrowserTests.enterWell(athlete, "62", "70");
		if (!loadedAnew) {
			athlete.sees("entry.changed-elsewhere");
			assertThat(revisionsOfToday()).isOne();
			athlete.press("button[name='allWell']");
		}
		athlete.sees("again.title");
		athlete.go("/today");
		athlete.sees("clearance.REST");
		assertThat(revisionsOfToday()).isEqualTo(2);
	}

	@Test
	void tellsTheSecondOfTwoWindowsAndLosesNothing() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		String first = PHONE.driver().getWindowHandle();
		PHONE.driver().switchTo().newWindow(WindowType.TAB);
		PHONE.prepareWindow();
		athlete.go("/morning");
		MainJobBrowserTests.enterWell(athlete, "50", "70");
		assertThat(revisionsOfToday()).isOne();
		PHONE.driver().switchTo().window(first);
		MainJobBrowserTests.enterWell(athlete, "62", "70");
		athlete.sees("entry.changed-elsewhere");
		assertThat(athlete.find("[name='rhr']").getDomProperty("value")).isEqualTo("62");
		assertThat(revisionsOfToday()).isOne();
		athlete.press("button[name='allWell']");
		athlete.sees("again.title");
		assertThat(revisionsOfToday()).isEqualTo(2);
		athlete.go("/today");
		athlete.sees("clearance.REST");
	}

	@Test
	void drawsTheChartOfAnAthlete() {
		Visitor coach = signedIn(DESK, this.coachName);
		coach.press("table.board tbody th a");
		assertThat(coach.all("canvas")).hasSize(2)
			.allSatisfy((canvas) -> assertThat(canvas.getSize().height).isPositive());
		Object drawn = DESK.driver()
			.executeScript("const c = document.querySelector('canvas');"
					+ "return c.getContext('2d').getImageData(0, 0, c.width, c.height).data.some((v) => v > 0)");
		assertThat(drawn).isEqualTo(true);
	}

	@Test
	void keepsAnAthleteFromTheCoachsPages() {
		Visitor athlete = signedIn(PHONE, this.annName);
		PHONE.expectError("403");
		athlete.go("/board");
		athlete.sees("error.403.title");
	}

	@Test
	void signsOut() {
		Visitor coach = signedIn(DESK, this.coachName);
		coach.press("form.who button");
		coach.sees("sign-in.signed-out");
		coach.go("/board");
		assertThat(coach.path()).startsWith("/sign-in");
	}

	@Test
	void saysAtTheSignInThatTheSessionHasExpired() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/report");
		athlete.tick("kind", "FEVER");
		athlete.tick("worst", "6");
		this.jdbc.sql("delete from spring_session where principal_name = ?").param(this.ann.id().toString()).update();
		athlete.press("form button.primary");
		assertThat(athlete.path()).startsWith("/sign-in");
		athlete.sees("sign-in.expired");
		athlete.signIn(this.annName);
		assertThat(athlete.path()).isEqualTo("/today");
	}

	private int revisionsOfToday() {
		return this.mornings.of(this.ann.id(), Runners.TODAY, Runners.TODAY).size();
	}

	private int count(String table) {
		Integer count = CurrentPerson.callAs(this.ann.id(),
				() -> new TransactionTemplate(this.transactions)
					.execute((status) -> this.jdbc.sql("select count(*) from " + table + " where athlete_id = ?")
						.param(this.ann.id().value())
						.query(Integer.class)
						.single()));
		return (count == null) ? -1 : count;
	}

	private void await(Visitor coach, int rows) {
		new WebDriverWait(DESK.driver(), Duration.ofSeconds(10))
			.until((driver) -> coach.all("table.board tbody tr").size() == rows);
	}

	private void save(Athlete athlete, NewMorning morning) {
		assertThat(this.mornings.save(athlete.id(), morning,
				Submission.page(athlete.id(), Role.ATHLETE, Submission.newRequestId())))
			.isInstanceOf(Saved.Stored.class);
	}

}
