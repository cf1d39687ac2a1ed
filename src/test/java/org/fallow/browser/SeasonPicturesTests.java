package org.fallow.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.account.SignedInPerson;
import org.fallow.entry.Activity;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.NewSession;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Sessions;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.rules.Intensity;
import org.fallow.team.Athlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.training.Programmes;
import org.fallow.training.core.PartsText;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.OutputType;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.core.userdetails.UserDetailsService;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The season of docs/season.md lived day by day, with its pictures: ill on Wednesday 18
 * March, three weeks back, a race on Sunday 26 April. Not part of the ordinary build.
 */
@Tag("pictures")
class SeasonPicturesTests extends OnRealPages {

	private static final Path FOLDER = Path.of("docs", "pictures");

	private static final LocalDate ONSET = Runners.TODAY;

	private static final LocalDate RACE = LocalDate.of(2026, 4, 26);

	/** The first Monday of the programme: four loading weeks before the illness. */
	private static final LocalDate FIRST = LocalDate.of(2026, 2, 16);

	private static final Set<LocalDate> UNLOADING = Set.of(LocalDate.of(2026, 3, 30));

	/** The morning after a short night: a bad one. */
	private static final LocalDate BAD = LocalDate.of(2026, 3, 31);

	@RegisterExtension
	static final Browser BROWSER = Browser.desk();

	@Autowired
	private People people;

	@Autowired
	private Programmes programmes;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Sessions sessions;

	@Autowired
	private UserDetailsService users;

	@Test
	void livesFromTheFirstSymptomToTheRace() throws IOException {
		writeTheProgramme();
		logTheWeeksBefore();
		live(ONSET);
		athlete("/today", "clearance.REST", "season-1-first-morning", Browser.Size.PHONE);
		coach("/board", "clearance.REST", "season-2-board", Browser.Size.DESK);
		live(LocalDate.of(2026, 3, 22));
		athlete("/sessions", "rejoin.title", "season-3-stage-1", Browser.Size.PHONE);
		live(LocalDate.of(2026, 3, 24));
		coach("/roll", "version.EASY", "season-4-roll", Browser.Size.PHONE);
		live(LocalDate.of(2026, 3, 29));
		athlete("/return-path", "nav.return-path", "season-5-stage-2", Browser.Size.PHONE);
		live(BAD);
		athlete("/today", "clearance.EASY_ONLY", "season-6-bad-morning", Browser.Size.PHONE);
		live(LocalDate.of(2026, 4, 7));
		athlete("/sessions", "version.AS_PROGRAMMED", "season-7-stage-3", Browser.Size.PHONE);
		live(LocalDate.of(2026, 4, 14));
		coach("/athletes/" + this.ann.id().value(), "clearance.FULL_TRAINING", "season-8-closed", Browser.Size.DESK);
		live(RACE);
		athlete("/today", "version.AS_PROGRAMMED", "season-9-race", Browser.Size.PHONE);
	}

	/** Every state of a page, light and dark, at both widths: looked at, not compared. */
	@Test
	void drawsEveryState() throws IOException {
		state(null, "/sign-in", "signed-out");
		Athlete newcomer = this.runners.athlete(this.team, "Bo Birch", "Track");
		String bo = this.runners.open(newcomer.id());
		state(bo, "/today", "no-data");
		state(bo, "/mornings", "no-data-chart");
		state(bo, "/sessions", "nothing-programmed");
		enter(newcomer.id(), with(ONSET, 52));
		state(bo, "/today", "first-week");
		state(this.annName, "/today", "not-entered");
		enter(this.ann.id(), with(ONSET, 50));
		state(this.annName, "/today", "cleared");
		enter(this.ann.id(), with(ONSET, 50, new ReportedSymptom(Symptom.SNEEZING, Severity.MILD, null)).basedOn(1));
		state(this.annName, "/today", "easy");
		enter(newcomer.id(),
				with(ONSET, 52, new ReportedSymptom(Symptom.CHEST_PAIN, Severity.SEVERE, null)).basedOn(1));
		state(bo, "/today", "refer");
		BROWSER.expectError("404");
		state(this.annName, "/nowhere", "error");
	}

	@Test
	void drawsEveryStage() throws IOException {
		writeTheProgramme();
		live(ONSET);
		state(this.annName, "/today", "rest");
		live(LocalDate.of(2026, 3, 24));
		state(this.annName, "/today", "stage-1");
		live(LocalDate.of(2026, 4, 1));
		state(this.annName, "/today", "stage-2");
		live(LocalDate.of(2026, 4, 7));
		state(this.annName, "/today", "stage-3");
		this.clock.set(LocalDate.of(2026, 4, 12), LocalTime.of(9, 0), ZoneOffset.UTC);
		state(this.annName, "/today", "gone-quiet");
		state(this.coachName, "/board", "gone-quiet-board");
	}

	/**
	 * No run is logged, so no gate opens: after twice the path's length it is stalled.
	 */
	@Test
	void drawsAStalledReturn() throws IOException {
		for (LocalDate day = ONSET; day.isBefore(ONSET.plusDays(50)); day = day.plusDays(1)) {
			this.clock.set(day, LocalTime.of(7, 0), ZoneOffset.UTC);
			enter(this.ann.id(), morning(day));
		}
		state(this.annName, "/today", "stalled");
		state(this.annName, "/return-path", "stalled-path");
	}

	private void enter(PersonId athlete, NewMorning morning) {
		CurrentPerson.runAs(athlete,
				() -> assertThat(
						this.mornings.save(athlete, morning, Submission.page(athlete, Role.ATHLETE, UUID.randomUUID())))
					.isInstanceOf(Saved.Stored.class));
	}

	private void state(@Nullable String who, String page, String state) throws IOException {
		BROWSER.driver().manage().deleteAllCookies();
		Visitor visitor = (who == null) ? visitor(BROWSER) : signedIn(BROWSER, who);
		for (String look : List.of("light", "dark")) {
			BROWSER.prefer(look);
			visitor.go(page);
			for (Browser.Size size : Browser.Size.values()) {
				BROWSER.show(size);
				BROWSER.driver()
					.executeAsyncScript(
							"const done = arguments[0]; requestAnimationFrame(() => setTimeout(done, 300))");
				Files.write(FOLDER.resolve("state-" + state + "-" + look + "-" + size.width() + ".png"),
						BROWSER.driver().getScreenshotAs(OutputType.BYTES));
			}
		}
		BROWSER.prefer("light");
	}

	private void writeTheProgramme() {
		PersonId coach = ((SignedInPerson) this.users.loadUserByUsername(this.coachName)).personId();
		UUID group = this.people.findOrAddGroup(this.team.id(), "Track").id();
		for (LocalDate monday = FIRST; !monday.isAfter(RACE); monday = monday.plusWeeks(1)) {
			ProgrammeWeek week = week(monday);
			CurrentPerson.runAs(coach, () -> assertThat(this.programmes.write(group, week, 0, coach)).isTrue());
		}
	}

	private static ProgrammeWeek week(LocalDate monday) {
		boolean race = !RACE.isBefore(monday) && RACE.isBefore(monday.plusWeeks(1));
		boolean unloading = UNLOADING.contains(monday);
		List<PlannedSession> sessions = new ArrayList<>();
		sessions.add(session(monday.plusDays(1), PlannedSession.Kind.KEY_SESSION,
				unloading ? "15 min easy; 4 x 3 min threshold, 90 s between; 15 min easy"
						: "15 min easy; 6 x 3 min vo2max, 90 s between; 10 min easy"));
		sessions.add(session(monday.plusDays(3), PlannedSession.Kind.EASY_RUN, "40 min easy"));
		sessions.add(race
				? session(RACE, PlannedSession.Kind.RACE, "15 min easy; 10 km in 48:00 race pace; 10 min easy")
				: session(monday.plusDays(6), PlannedSession.Kind.LONG_RUN, unloading ? "60 min easy" : "80 min easy"));
		return new ProgrammeWeek(monday,
				race ? ProgrammeWeek.Kind.RACE : unloading ? ProgrammeWeek.Kind.UNLOADING : ProgrammeWeek.Kind.LOADING,
				sessions);
	}

	private static PlannedSession session(LocalDate day, PlannedSession.Kind kind, String parts) {
		return new PlannedSession("k" + day, day, kind, PlannedSession.Terrain.TRACK, LocalTime.of(18, 30), "Track", "",
				PartsText.read(parts).parts());
	}

	private void logTheWeeksBefore() {
		for (LocalDate day = FIRST; day.isBefore(LocalDate.of(2026, 3, 16)); day = day.plusDays(1)) {
			int minutes = switch (day.getDayOfWeek()) {
				case TUESDAY -> 50;
				case THURSDAY -> 40;
				case SUNDAY -> 80;
				default -> 0;
			};
			if (minutes > 0) {
				NewSession run = new NewSession(null, day, Activity.RUN, minutes, 4.0,
						(minutes == 50) ? Intensity.VO2MAX : Intensity.EASY, List.of(), false, null, day);
				log(run, Submission.imported(this.ann.id(), UUID.randomUUID()));
			}
		}
	}

	private @Nullable LocalDate lived;

	/** Every morning up to a day, and the runs of the days before it. */
	private void live(LocalDate to) {
		LocalDate from = (this.lived == null) ? ONSET : this.lived.plusDays(1);
		for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(1)) {
			if (!day.equals(ONSET)) {
				this.clock.set(day.minusDays(1), LocalTime.of(20, 0), ZoneOffset.UTC);
				run(day.minusDays(1));
			}
			this.clock.set(day, LocalTime.of(7, 0), ZoneOffset.UTC);
			NewMorning morning = morning(day);
			CurrentPerson.runAs(this.ann.id(), () -> assertThat(this.mornings.save(this.ann.id(), morning, page()))
				.isInstanceOf(Saved.Stored.class));
		}
		this.lived = to;
	}

	private static NewMorning morning(LocalDate day) {
		int ill = (int) ChronoUnit.DAYS.between(ONSET, day);
		if (ill < 2) {
			return with(day, 63 - 3 * ill, new ReportedSymptom(Symptom.FEVERISH, Severity.MODERATE, null),
					new ReportedSymptom(Symptom.MUSCLE_ACHES, Severity.MODERATE, null));
		}
		if (ill == 2) {
			return with(day, 55, new ReportedSymptom(Symptom.RUNNY_NOSE, Severity.MILD, null));
		}
		return with(day, day.equals(BAD) ? 58 : 50 + day.getDayOfMonth() % 3 - 1);
	}

	private static NewMorning with(LocalDate day, double rhr, ReportedSymptom... symptoms) {
		return NewMorning.measured(day, Method.STRAP, Posture.LYING, rhr, 70.0 - (rhr - 50)).with(symptoms);
	}

	private void run(LocalDate day) {
		boolean runs = Set.of(DayOfWeek.TUESDAY, DayOfWeek.THURSDAY, DayOfWeek.SUNDAY).contains(day.getDayOfWeek());
		if (!runs || day.isBefore(LocalDate.of(2026, 3, 22))) {
			return;
		}
		boolean first = day.isBefore(LocalDate.of(2026, 3, 29));
		boolean second = !first && day.isBefore(LocalDate.of(2026, 4, 6));
		log(NewSession.run(day, first ? 28 : second ? 40 : 45, first ? 2.0 : second ? 3.0 : 5.0,
				first ? Intensity.EASY : second ? Intensity.STRIDES : Intensity.THRESHOLD), page());
	}

	private void log(NewSession run, Submission submission) {
		CurrentPerson.runAs(this.ann.id(),
				() -> assertThat(this.sessions.save(this.ann.id(), run, submission)).isInstanceOf(Saved.Stored.class));
	}

	private Submission page() {
		return Submission.page(this.ann.id(), Role.ATHLETE, UUID.randomUUID());
	}

	private void athlete(String page, String sees, String picture, Browser.Size size) throws IOException {
		take(this.annName, page, sees, picture, size);
	}

	private void coach(String page, String sees, String picture, Browser.Size size) throws IOException {
		take(this.coachName, page, sees, picture, size);
	}

	private void take(String who, String page, String sees, String picture, Browser.Size size) throws IOException {
		BROWSER.driver().manage().deleteAllCookies();
		Visitor visitor = signedIn(BROWSER, who);
		visitor.go(page);
		visitor.sees(sees);
		BROWSER.show(size);
		BROWSER.driver().executeScript("window.scrollTo(0, 0)");
		BROWSER.driver()
			.executeAsyncScript("const done = arguments[0]; requestAnimationFrame(() => setTimeout(done, 400))");
		Files.write(FOLDER.resolve(picture + ".png"), BROWSER.driver().getScreenshotAs(OutputType.BYTES));
		visitor.press("form.who button");
	}

}
