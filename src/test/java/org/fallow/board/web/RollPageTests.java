package org.fallow.board.web;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.account.Accounts;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
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
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Intensity;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.fallow.training.Programmes;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatException;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

@DatabaseTest
@Import(SettableClock.class)
class RollPageTests {

	/** A Tuesday. */
	private static final LocalDate TODAY = LocalDate.of(2026, 3, 17);

	@Autowired
	private SettableClock clock;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	@Autowired
	private Programmes programmes;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Sessions sessions;

	private PersonId ann;

	private PersonId homeCoach;

	private PersonId guestCoach;

	private Team home;

	private Team guests;

	/**
	 * Ann's home is the group on the track; she joins the hill runners of another team.
	 */
	@BeforeEach
	void makeTwoGroups() {
		this.clock.set(TODAY);
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.home = this.people.addTeam(club, "Home", ZoneOffset.UTC);
		this.guests = this.people.addTeam(club, "Guests", ZoneOffset.UTC);
		UUID track = this.people.findOrAddGroup(this.home.id(), "Track").id();
		UUID hill = this.people.findOrAddGroup(this.guests.id(), "Hill").id();
		this.homeCoach = coach(this.home, "Cay");
		this.guestCoach = coach(this.guests, "Gil");
		this.ann = this.people.addAthlete(this.home.id(), new NewAthlete("Ann Ashe", null, null, null, "Track")).id();
		write(track, this.homeCoach, "t");
		write(hill, this.guestCoach, "h");
	}

	@Test
	void tellsWhatWasRunTodayAlready() throws Exception {
		enter();
		assertThat(roll(this.homeCoach)).contains("Ann Ashe", "As programmed").doesNotContain("logged today");
		CurrentPerson.runAs(this.ann,
				() -> assertThat(
						this.sessions.save(this.ann, NewSession.run(TODAY, 30, 3.0, Intensity.EASY), submission()))
					.isInstanceOf(Saved.Stored.class));
		assertThat(roll(this.homeCoach)).contains("30 min logged today");
	}

	/** What was ticked yesterday is read at the track today. */
	@Test
	void tellsWhatWasTickedAfterTheLastSessions() throws Exception {
		CurrentPerson.runAs(this.ann, () -> assertThat(this.sessions.save(this.ann,
				new NewSession(null, TODAY.minusDays(1), Activity.RUN, 40, 6.5, Intensity.EASY,
						List.of(AfterSession.HEADACHE, AfterSession.UNUSUAL_FATIGUE), false, "<i>hot</i>", null),
				submission()))
			.isInstanceOf(Saved.Stored.class));
		enter();
		assertThat(roll(this.homeCoach)).contains("Run, 40 min, effort 6.5, Headache, ", "&lt;i&gt;hot&lt;/i&gt;")
			.doesNotContain("<i>hot");
	}

	/** Nobody runs two programmes at once: the database refuses the second group. */
	@Test
	void keepsAnAthleteInOneGroup() throws Exception {
		UUID hill = this.people.findOrAddGroup(this.guests.id(), "Hill").id();
		assertThatException()
			.isThrownBy(() -> Purpose.OPERATION.run(() -> this.people.joins(this.ann, this.guests.id(), hill)))
			.withMessageContaining("membership_one_home_team");
		enter();
		assertThat(roll(this.homeCoach)).contains("Ann Ashe");
		assertThat(roll(this.guestCoach)).doesNotContain("Ann Ashe");
	}

	@Test
	void followsAnAthleteToAnotherGroup() throws Exception {
		UUID steps = this.people.findOrAddGroup(this.home.id(), "Steps").id();
		write(steps, this.homeCoach, "s");
		enter();
		assertThat(lines(roll(this.homeCoach))).isOne();
		CurrentPerson.runAs(this.ann, () -> this.people.joins(this.ann, this.home.id(), steps));
		assertThat(lines(roll(this.homeCoach))).isOne();
		assertThat(this.mvc
			.perform(get("/roll").param("group", steps.toString())
				.with(user(this.users.loadUserByUsername(this.homeCoach + "@club.example"))))
			.andReturn()
			.getResponse()
			.getContentAsString()).contains("Ann Ashe");
	}

	/** What is sent leaves the walls: it names nobody. */
	@Test
	void writesABriefToSendThatNamesNobody() throws Exception {
		enter(NewMorning.feeling(TODAY, new ReportedSymptom(Symptom.FEVERISH, Severity.MODERATE, null)));
		String html = page("/brief", this.homeCoach);
		String text = html.substring(html.indexOf("<textarea"), html.indexOf("</textarea>"));
		assertThat(html).contains("Ann Ashe");
		assertThat(text)
			.contains("Squad brief, Tuesday 17 March", "Track, one athlete", "Ill: 1",
					"Tuesday 17 Mar Key session: 1 Rest", "not medical advice")
			.doesNotContain("Ann");
	}

	@Test
	void escapesNamesInTheRowsOfBoardAndRoll() throws Exception {
		this.people.addAthlete(this.home.id(), new NewAthlete("Bo <b>\"&'", null, null, null, "Track"));
		for (String path : List.of("/board", "/roll")) {
			assertThat(page(path, this.homeCoach)).contains(">Bo &lt;b&gt;&quot;&amp;&#39;</a>")
				.doesNotContain("Bo <b>");
		}
	}

	/** The rows are written by Java, the numbers above them by the template. */
	@Test
	void writesTheSameBadgeInRowsAsAboveThem() throws Exception {
		enter();
		assertThat(page("/board", this.homeCoach).split(
				Pattern.quote("<span class=\"clearance clearance-full-training\"><span>Full training</span></span>"),
				-1))
			.hasSize(3);
	}

	private static int lines(String roll) {
		return roll.split("Ann Ashe", -1).length - 1;
	}

	private PersonId coach(Team team, String name) {
		PersonId coach = this.people.addCoach(team.id(), name);
		this.accounts.open(coach, coach + "@club.example");
		return coach;
	}

	private void write(UUID group, PersonId coach, String key) {
		PlannedSession session = new PlannedSession(key, TODAY, PlannedSession.Kind.KEY_SESSION,
				PlannedSession.Terrain.TRACK, LocalTime.of(18, 30), "", "",
				List.of(Part.of(Part.Role.BLOCK, 1800, Intensity.THRESHOLD)));
		ProgrammeWeek week = new ProgrammeWeek(TODAY.minusDays(1), ProgrammeWeek.Kind.LOADING, List.of(session));
		CurrentPerson.runAs(coach, () -> assertThat(this.programmes.write(group, week, 0, coach)).isTrue());
	}

	private void enter() {
		enter(NewMorning.measured(TODAY, Method.STRAP, Posture.LYING, 50.0, 60.0));
	}

	private void enter(NewMorning morning) {
		CurrentPerson.runAs(this.ann,
				() -> assertThat(this.mornings.save(this.ann, morning, submission())).isInstanceOf(Saved.Stored.class));
	}

	private Submission submission() {
		return Submission.page(this.ann, Role.ATHLETE, UUID.randomUUID());
	}

	private String roll(PersonId coach) throws Exception {
		return page("/roll", coach);
	}

	private String page(String path, PersonId coach) throws Exception {
		return this.mvc.perform(get(path).with(user(this.users.loadUserByUsername(coach + "@club.example"))))
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

}
