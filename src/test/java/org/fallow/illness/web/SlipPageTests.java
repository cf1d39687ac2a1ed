package org.fallow.illness.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.account.Accounts;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.NewSession;
import org.fallow.entry.Saved;
import org.fallow.entry.Sessions;
import org.fallow.entry.Submission;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Intensity;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/** What an athlete and a coach see of red flags, slips and sessions, on real pages. */
@DatabaseTest
@Import(SettableClock.class)
class SlipPageTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	private static final String NAMED = "Chest pain, pressure or tightness";

	@Autowired
	private SettableClock clock;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	@Autowired
	private Sessions sessions;

	@Autowired
	private IllnessFacts facts;

	private Team team;

	private PersonId ann;

	private PersonId coach;

	@BeforeEach
	void makePeople() {
		this.clock.set(TODAY);
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.coach = opened(this.people.addCoach(this.team.id(), "Cay Coach"));
		this.ann = born(LocalDate.of(2007, 3, 10));
	}

	private PersonId born(LocalDate day) {
		return opened(this.people.addAthlete(this.team.id(), new NewAthlete("Ann Ashe", null, null, day, null)).id());
	}

	private PersonId opened(PersonId person) {
		this.accounts.open(person, person + "@club.example");
		return person;
	}

	@Test
	void takesARedFlagBackForHalfAnHourUntilTheCoachHasAsked() throws Exception {
		morning("CHEST_PAIN").andExpect(redirectedUrl("/slip"));
		assertThat(page(this.coach, "/board")).contains("Refer");
		this.clock.advance(Duration.ofMinutes(30).minusSeconds(1));
		assertThat(page(this.ann, "/slip")).contains("tel:112", NAMED, "A mistake: none of these, today or this week");
		slip("CHEST_PAIN").andExpect(redirectedUrl("/today"));
		assertThat(page(this.ann, "/today")).contains("Easy only", "said to be a slip", "Worth knowing")
			.doesNotContain("tel:112", "advice is worth having");
		assertThat(page(this.coach, "/board")).contains("Ticked by mistake", "Easy only").doesNotContain("row-refer");
		assertThat(page(this.coach, "/athletes/" + this.ann.value())).contains(NAMED + " (said to be a slip)",
				"Said to be a slip: " + NAMED);
		assertThat(page(this.ann, "/morning")).doesNotContain("name=\"symptom.CHEST_PAIN\" value=\"SEVERE\" checked");
		this.clock.set(TODAY.plusDays(1));
		morning(null);
		assertThat(page(this.ann, "/today")).contains("Easy only", "until a coach has noted having asked");
		decide("asked", "").andExpect(status().isOk());
		assertThat(page(this.ann, "/today")).contains("Easy only");
		decide("asked", "hit the wrong box on the bus").andExpect(status().is3xxRedirection());
		assertThat(page(this.ann, "/today")).contains("Full training");
		assertThat(html(decide("asked", "once more"))).contains("nothing was changed");
	}

	@Test
	void namesARedFlagOfAReportAmongTheDecisions() throws Exception {
		this.mvc
			.perform(post("/report").with(csrf())
				.with(user(this.users.loadUserByUsername(this.ann + "@club.example")))
				.param("onset", TODAY.toString())
				.param("kind", "CHEST")
				.param("worst", "4")
				.param("redFlags", "CHEST_PAIN")
				.param("requestId", UUID.randomUUID().toString()))
			.andExpect(redirectedUrl("/slip"));
		assertThat(page(this.coach, "/athletes/" + this.ann.value())).contains("Clinician hold: " + NAMED)
			.doesNotContain(">CHEST_PAIN<");
	}

	@Test
	void isTooLateAfterHalfAnHour() throws Exception {
		morning("CHEST_PAIN");
		this.clock.advance(Duration.ofMinutes(30));
		assertThat(html(slip("CHEST_PAIN"))).contains("more than 30 minutes ago; the hold stands until a clinician");
		assertThat(page(this.ann, "/today")).contains("Refer", "tel:112");
		assertThat(slips()).isEmpty();
	}

	@Test
	void isForNobodyUnderEighteen() throws Exception {
		this.ann = born(LocalDate.of(2008, 3, 11));
		morning("CHEST_PAIN");
		assertThat(page(this.ann, "/slip")).contains("Under 18").doesNotContain("A mistake: none of these");
		assertThat(html(slip("CHEST_PAIN"))).contains("Under 18");
		assertThat(page(this.ann, "/today")).contains("Refer");
	}

	@Test
	void isStoredOnceWhenSentTwice() throws Exception {
		morning("CHEST_PAIN");
		this.clock.advance(Duration.ofSeconds(1));
		MockHttpServletRequestBuilder form = slipForm("CHEST_PAIN", TODAY);
		this.mvc.perform(form).andExpect(redirectedUrl("/today"));
		this.mvc.perform(form).andExpect(redirectedUrl("/today"));
		slip("CHEST_PAIN").andExpect(redirectedUrl("/today"));
		assertThat(slips()).hasSize(1);
	}

	@Test
	void isRefusedForAnotherDayAndForWhatIsNotTicked() throws Exception {
		morning("CHEST_PAIN");
		assertThat(html(this.mvc.perform(slipForm("CHEST_PAIN", TODAY.minusDays(1)))))
			.contains("Only what is ticked today for today");
		assertThat(html(slip("FAINTING"))).contains("not ticked today");
		assertThat(html(slip("WHATEVER"))).contains("nothing was changed");
		assertThat(html(this.mvc.perform(slipForm("CHEST_PAIN", null)))).contains("nothing was changed");
		assertThat(slips()).isEmpty();
	}

	@Test
	void holdsTheSameTickedAgain() throws Exception {
		morning("CHEST_PAIN");
		slip("CHEST_PAIN").andExpect(redirectedUrl("/today"));
		morning("CHEST_PAIN", 1).andExpect(redirectedUrl("/slip"));
		assertThat(page(this.ann, "/today")).contains("Refer");
		assertThat(html(slip("CHEST_PAIN"))).contains("within the last 90 days");
		assertThat(page(this.coach, "/athletes/" + this.ann.value())).doesNotContain(NAMED + " (said to be a slip)");
	}

	/** Where nobody can ask, three more entries. */
	@Test
	void waitsForThreeEntriesWithoutACoach() throws Exception {
		this.team = this.people.addTeam(this.people.foundClub("Alone " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.ann = born(LocalDate.of(1990, 1, 1));
		morning("CHEST_PAIN");
		slip("CHEST_PAIN").andExpect(redirectedUrl("/today"));
		for (int i = 1; i <= 3; i++) {
			this.clock.set(TODAY.plusDays(i));
			morning(null);
			assertThat(page(this.ann, "/today")).contains("no coach is there to ask");
		}
		this.clock.set(TODAY.plusDays(4));
		morning(null);
		assertThat(page(this.ann, "/today")).contains("Full training");
	}

	@Test
	void takesAnotherTickBackOnTheSameDay() throws Exception {
		morning("VOMITING").andExpect(redirectedUrl("/today"));
		assertThat(page(this.ann, "/today")).contains("Ticked by mistake?", "Rest");
		assertThat(page(this.ann, "/slip")).contains("Vomiting", "once in 14 days").doesNotContain("tel:112");
		slip("VOMITING").andExpect(redirectedUrl("/today"));
		assertThat(page(this.ann, "/today")).contains("Easy only");
		this.clock.set(TODAY.plusDays(14));
		morning("DIARRHOEA");
		assertThat(html(slip("DIARRHOEA"))).contains("within the last 14 days already; the tick stands");
	}

	@Test
	void waitsForTheCoachInAnEpisode() throws Exception {
		morning("FATIGUE");
		this.clock.set(TODAY.plusDays(1));
		morning("VOMITING");
		slip("VOMITING").andExpect(redirectedUrl("/today"));
		assertThat(page(this.ann, "/slip")).contains("it counts until a coach accepts that");
		assertThat(page(this.coach, "/athletes/" + this.ann.value() + "/decision")).contains("Accept a slip");
		decide("slip", "told me at once").andExpect(status().is3xxRedirection());
		assertThat(page(this.ann, "/slip")).doesNotContain("it counts until a coach accepts that");
		assertThat(html(decide("slip", "again"))).contains("No slip of today waits");
		assertThat(page(this.coach, "/athletes/" + this.ann.value())).contains("Slip accepted");
	}

	/** A deputy may be stricter, and loosens nothing. */
	@Test
	void isNotForADeputyToEnd() throws Exception {
		PersonId deputy = opened(this.people.addCoach(
				this.people.addTeam(this.people.foundClub("Else " + UUID.randomUUID()).id(), "Else", ZoneOffset.UTC)
					.id(),
				"Dee Deputy"));
		CurrentPerson.runAs(this.coach, () -> this.posts.give(deputy, new NewPost(Post.DEPUTY, this.team.clubId(),
				this.team.id(), true, List.of(), this.clock.instant().plus(Duration.ofDays(9)))));
		morning("CHEST_PAIN");
		slip("CHEST_PAIN");
		this.mvc
			.perform(post("/athletes/" + this.ann.value() + "/decision/asked").with(csrf())
				.with(user(this.users.loadUserByUsername(deputy + "@club.example")))
				.param("reason", "asked"))
			.andExpect(status().isNotFound());
	}

	@ParameterizedTest
	@CsvSource({ "OTHER,5,redirect", ",5,form", "OTHER,eleven,form" })
	void holdsARedFlagOfAReportWhateverElseIsWrong(String kind, String worst, String what) throws Exception {
		MockHttpServletRequestBuilder form = post("/report").with(csrf())
			.with(user(this.users.loadUserByUsername(this.ann + "@club.example")))
			.param("onset", TODAY.toString())
			.param("worst", worst)
			.param("redFlags", "CHEST_PAIN")
			.param("requestId", UUID.randomUUID().toString());
		if (kind != null) {
			form.param("kind", kind);
		}
		ResultActions sent = this.mvc.perform(form);
		if (what.equals("redirect")) {
			sent.andExpect(redirectedUrl("/slip"));
		}
		else {
			assertThat(html(sent)).contains("This is saved and holds already", "tel:112", NAMED);
		}
		this.mvc.perform(form);
		assertThat(CurrentPerson.callAs(this.ann, () -> this.facts.of(this.ann))
			.stream()
			.filter((stored) -> stored.event() instanceof IllnessEvent.Hold)).hasSize(1);
		assertThat(page(this.ann, "/today")).contains("Refer");
		assertThat(page(this.ann, "/slip")).contains("while reporting an illness").doesNotContain("A mistake: none");
	}

	@Test
	void showsCoachAndAthleteWhatWasToldAfterASession() throws Exception {
		morning("FATIGUE");
		for (int i = 1; i <= 4; i++) {
			this.clock.set(TODAY.plusDays(i));
			morning(null);
		}
		assertThat(page(this.ann, "/today")).contains("Stage 1");
		this.clock.advance(Duration.ofHours(10));
		CurrentPerson.runAs(this.ann,
				() -> assertThat(this.sessions.save(this.ann,
						new NewSession(null, TODAY.plusDays(4), Activity.RUN, 35, 6.5, Intensity.EASY,
								List.of(AfterSession.HEADACHE), false, "hot & windy", null),
						Submission.page(this.ann, Role.ATHLETE, UUID.randomUUID())))
					.isInstanceOf(Saved.Stored.class));
		assertThat(page(this.coach, "/athletes/" + this.ann.value()))
			.contains("Sessions logged", "35", "6.5", "Headache", "hot &amp; windy",
					"counts it from the next morning on", "counting from",
					"logged after this morning’s entry, counting from")
			.doesNotContain("<span>Sessions above it: 0</span>");
		assertThat(page(this.ann, "/return-path")).contains("counting from");
		assertThat(page(this.ann, "/today")).contains("Headache", "effort 6.5", "counts it from the next morning on");
	}

	@Test
	void dialsTheNumberOfTheClub() throws Exception {
		PersonId owner = opened(this.people.addCoach(this.team.id(), "Olu Owner"));
		Purpose.OPERATION.run(() -> this.posts.give(owner,
				new NewPost(Post.OWNER, this.team.clubId(), null, false, List.of(), null)));
		assertThat(page(owner, "/club")).contains("Emergency number of the place");
		number(owner, "9 9x").andExpect(redirectedUrl("/club"));
		morning("CHEST_PAIN");
		assertThat(page(this.ann, "/today")).contains("tel:112", "or the number where you are");
		number(owner, " 1-4 4 ").andExpect(redirectedUrl("/club"));
		assertThat(page(owner, "/club")).contains("value=\"144\"");
		for (PersonId person : List.of(this.ann, this.coach)) {
			String path = person.equals(this.ann) ? "/today" : "/athletes/" + this.ann.value();
			assertThat(page(person, path)).contains("tel:144", "Call 144")
				.doesNotContain("or the number where you are");
		}
		number(owner, "");
		assertThat(page(this.ann, "/today")).contains("tel:112");
	}

	private ResultActions number(PersonId owner, String number) throws Exception {
		return this.mvc.perform(post("/club/emergency").with(csrf())
			.with(user(this.users.loadUserByUsername(owner + "@club.example")))
			.param("clubId", this.team.clubId().toString())
			.param("number", number));
	}

	private List<IllnessEvent> slips() {
		return CurrentPerson.callAs(this.ann, () -> this.facts.of(this.ann))
			.stream()
			.map((stored) -> stored.event())
			.filter((event) -> event instanceof IllnessEvent.Slip)
			.toList();
	}

	private ResultActions morning(String symptom) throws Exception {
		return morning(symptom, 0);
	}

	private ResultActions morning(String symptom, int revision) throws Exception {
		MockHttpServletRequestBuilder form = post("/morning").with(csrf())
			.with(user(this.users.loadUserByUsername(this.ann + "@club.example")))
			.param("day", LocalDate.ofInstant(this.clock.instant(), ZoneOffset.UTC).toString())
			.param("feels", "WELL")
			.param("feverMedicine", "NONE")
			.param("revision", String.valueOf(revision))
			.param("requestId", UUID.randomUUID().toString());
		return this.mvc.perform((symptom == null) ? form : form.param("symptom." + symptom, "SEVERE"));
	}

	/** A second after whatever came before it. */
	private ResultActions slip(String tick) throws Exception {
		this.clock.advance(Duration.ofSeconds(1));
		return this.mvc.perform(slipForm(tick, LocalDate.ofInstant(this.clock.instant(), ZoneOffset.UTC)));
	}

	private MockHttpServletRequestBuilder slipForm(String tick, LocalDate day) {
		return post("/slip").with(csrf())
			.with(user(this.users.loadUserByUsername(this.ann + "@club.example")))
			.param("day", String.valueOf(day))
			.param("tick", tick)
			.param("session", "")
			.param("requestId", UUID.randomUUID().toString());
	}

	private ResultActions decide(String what, String reason) throws Exception {
		return this.mvc.perform(post("/athletes/" + this.ann.value() + "/decision/" + what).with(csrf())
			.with(user(this.users.loadUserByUsername(this.coach + "@club.example")))
			.param("reason", reason)
			.param("requestId", UUID.randomUUID().toString()));
	}

	private String page(PersonId person, String path) throws Exception {
		return html(this.mvc.perform(get(path).with(user(this.users.loadUserByUsername(person + "@club.example")))));
	}

	private static String html(ResultActions sent) throws Exception {
		return sent.andExpect(status().isOk()).andReturn().getResponse().getContentAsString(StandardCharsets.UTF_8);
	}

}
