package org.fallow.illness.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
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
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What coaches and athletes see of two entries of an invented person, on real pages.
 */
@DatabaseTest
@Import(SettableClock.class)
class MergePagesTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

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
	private Mornings mornings;

	@Autowired
	private Sessions sessions;

	private Team team;

	private PersonId coach;

	private PersonId kept;

	private PersonId other;

	private PersonId third;

	@BeforeEach
	void makePeople() {
		this.clock.set(TODAY);
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.coach = opened(this.people.addCoach(this.team.id(), "Cay Coach"));
		this.kept = opened(athlete("Nkechi Umeadi"));
		this.other = opened(athlete("Nkechi Umedai"));
		this.third = athlete("N. Umeadi");
	}

	private PersonId athlete(String name) {
		return this.people.addAthlete(this.team.id(), new NewAthlete(name, null, null, LocalDate.of(1999, 5, 5), null))
			.id();
	}

	private PersonId opened(PersonId person) {
		this.accounts.open(person, person + "@club.example");
		return person;
	}

	@Test
	void choosesComparesAndConfirms() throws Exception {
		morning(this.other, Symptom.CHEST_PAIN);
		morning(this.kept, null);
		assertThat(page(this.coach, "/people")).contains("/athletes/" + this.kept + "/same");
		assertThat(page(this.coach, "/athletes/" + this.kept)).contains("/athletes/" + this.kept + "/same");
		assertThat(page(this.coach, same(this.kept))).contains("Nkechi Umedai", "N. Umeadi", "Compare the two")
			.doesNotContain("They are the same person");
		assertThat(page(this.coach, same(this.kept) + "?other=" + this.other)).contains("They are the same person",
				"Refer", "Full training", "Both have a sign-in", "It is not medical advice");
		assertThat(page(this.kept, "/today")).contains("Full training");
		merge(this.kept, this.other, "one birth certificate").andExpect(redirectedUrl("/merges"));
		assertThat(page(this.coach, "/merges")).contains("Nkechi Umedai became part of Nkechi Umeadi", "Take back");
		assertThat(page(this.kept, "/today")).contains("Refer", "were two entries for you")
			.doesNotContain("Full training");
		assertThat(page(this.coach, "/board")).contains("Nkechi Umeadi").doesNotContain("Nkechi Umedai");
		assertThat(page(this.coach, "/merges/" + mergeId())).contains("one birth certificate", "Full training",
				"Refer");
	}

	@Test
	void isTakenBackAndTold() throws Exception {
		morning(this.other, Symptom.CHEST_PAIN);
		morning(this.kept, null);
		merge(this.kept, this.other, "the same");
		String id = mergeId();
		send(this.kept, "/merges/" + id + "/read").andExpect(redirectedUrl("/today"));
		assertThat(page(this.kept, "/today")).doesNotContain("were two entries for you");
		send(this.coach, "/merges/" + id + "/undo").andExpect(redirectedUrl("/merges"));
		assertThat(page(this.kept, "/today")).contains("Full training", "took back").doesNotContain("Refer");
		assertThat(page(this.other, "/today")).contains("Refer", "took back");
		assertThat(page(this.coach, "/board")).contains("Nkechi Umeadi", "Nkechi Umedai");
		assertThat(page(this.coach, "/merges")).contains("Taken back on").doesNotContain("/undo");
	}

	@Test
	void isTooLateAfterThirtyDays() throws Exception {
		merge(this.kept, this.other, "the same");
		String id = mergeId();
		this.clock.advance(Duration.ofDays(30));
		assertThat(page(this.coach, "/merges")).doesNotContain("/undo");
		send(this.coach, "/merges/" + id + "/undo").andExpect(redirectedUrl("/merges"));
		assertThat(page(this.coach, "/merges")).doesNotContain("Taken back on");
	}

	@Test
	void refusesAThird() throws Exception {
		merge(this.kept, this.other, "the same");
		assertThat(html(merge(this.third, this.other, "the same"))).contains("already part of another one");
		get(this.coach, same(this.other)).andExpect(redirectedUrl("/merges"));
		merge(this.other, this.third, "the same").andExpect(redirectedUrl("/merges"));
		assertThat(page(this.coach, "/board")).contains("N. Umeadi").doesNotContain("Nkechi Umedai");
	}

	@Test
	void refusesWhatIsNone() throws Exception {
		assertThat(html(merge(this.kept, this.kept, "x"))).contains("That is the same entry");
		assertThat(html(merge(this.kept, null, "x"))).contains("Choose the other entry first");
		assertThat(html(merge(this.kept, this.other, " "))).contains("They are the same person")
			.contains("aria-invalid=\"true\"");
		merge(this.kept, new PersonId(UUID.randomUUID()), "x").andExpect(status().isNotFound());
		assertThat(page(this.coach, "/merges")).contains("There are none.");
	}

	@Test
	void refusesTheOwnEntry() throws Exception {
		this.posts.give(this.kept,
				new NewPost(Post.HEAD_COACH, this.team.clubId(), this.team.id(), true, List.of(), null));
		ResultActions sent = send(this.kept, same(this.kept), this.other, "mine");
		int code = sent.andReturn().getResponse().getStatus();
		assertThat(code == 404 || code == 403 || html(sent).contains("Your own entry")).isTrue();
		assertThat(page(this.coach, "/merges")).contains("There are none.");
	}

	@Test
	void isNotForDeputies() throws Exception {
		PersonId deputy = opened(this.people.addPerson("Dee", ZoneOffset.UTC));
		this.posts.give(deputy,
				new NewPost(Post.DEPUTY, this.team.clubId(), this.team.id(), true, List.of(),
						this.clock.instant().plus(Duration.ofDays(3)).isAfter(Instant.now())
								? this.clock.instant().plus(Duration.ofDays(3))
								: Instant.now().plus(Duration.ofDays(3))));
		get(deputy, same(this.kept)).andExpect(status().is4xxClientError());
		send(deputy, same(this.kept), this.other, "x").andExpect(status().is4xxClientError());
		merge(this.kept, this.other, "x");
		send(deputy, "/merges/" + mergeId() + "/undo").andExpect(status().is4xxClientError());
		assertThat(page(this.coach, "/merges")).doesNotContain("Taken back on");
	}

	/** Pages agree with Today: lists show what both entered. */
	@Test
	void listsWhatBothEntered() throws Exception {
		morning(this.other, Symptom.SORE_THROAT);
		run(this.other, 47);
		merge(this.kept, this.other, "x");
		assertThat(page(this.kept, "/today")).doesNotContain("No entry").contains("47 min");
		assertThat(page(this.kept, "/morning"))
			.containsPattern(
					"name=\"symptom.SORE_THROAT\">\\s*(<option[^/]*/option>\\s*){2}<option value=\"MODERATE\" selected")
			.contains("61");
		assertThat(page(this.coach, "/athletes/" + this.kept)).contains("<span>47</span>");
		List<StoredRun> runs = runs();
		assertThat(runs).extracting(StoredRun::minutes).containsExactly(47);
		String key = runs.get(0).key();
		assertThat(page(this.kept, "/session/" + key)).contains("47");
		Saved saved = CurrentPerson.callAs(this.kept,
				() -> this.sessions.save(this.kept, correction(key), byAthlete(this.kept)));
		assertThat(saved).isInstanceOf(Saved.Stored.class);
		assertThat(runs()).extracting(StoredRun::minutes).containsExactly(35);
		assertThat(page(this.kept, "/today")).contains("35 min").doesNotContain("47 min");
	}

	private record StoredRun(String key, Integer minutes) {
	}

	private List<StoredRun> runs() {
		return CurrentPerson.callAs(this.kept,
				() -> this.sessions.of(this.kept, TODAY, TODAY)
					.stream()
					.map((log) -> new StoredRun(log.key(), log.minutes()))
					.toList());
	}

	private static NewSession correction(String key) {
		NewSession run = NewSession.run(TODAY, 35, 3.0, Intensity.EASY);
		return new NewSession(key, TODAY, run.activity(), 35, run.rpe(), run.intensity(), run.after(), false, null,
				null);
	}

	private void run(PersonId athlete, int minutes) {
		CurrentPerson.callAs(athlete, () -> this.sessions.save(athlete,
				NewSession.run(TODAY, minutes, 3.0, Intensity.EASY), byAthlete(athlete)));
	}

	private void morning(PersonId athlete, Symptom felt) {
		NewMorning calm = NewMorning.measured(TODAY, Method.STRAP, Posture.LYING, (felt == null) ? 50.0 : 61.0, null);
		NewMorning morning = (felt == null) ? calm : calm.with(ReportedSymptom.of(felt, Severity.MODERATE));
		Saved saved = CurrentPerson.callAs(athlete, () -> this.mornings.save(athlete, morning, byAthlete(athlete)));
		assertThat(saved).isInstanceOf(Saved.Stored.class);
	}

	private static Submission byAthlete(PersonId athlete) {
		return Submission.page(athlete, Role.ATHLETE, Ids.next());
	}

	private String mergeId() throws Exception {
		String page = page(this.coach, "/merges");
		int at = page.indexOf("/merges/") + "/merges/".length();
		return page.substring(at, at + 36);
	}

	private static String same(PersonId athlete) {
		return "/athletes/" + athlete + "/same";
	}

	private ResultActions merge(PersonId stays, PersonId goes, String reason) throws Exception {
		return send(this.coach, same(stays), goes, reason);
	}

	private ResultActions send(PersonId person, String path, PersonId goes, String reason) throws Exception {
		return this.mvc.perform(post(path).with(csrf())
			.with(user(this.users.loadUserByUsername(person + "@club.example")))
			.param("other", (goes == null) ? "" : goes.toString())
			.param("reason", reason)
			.param("requestId", UUID.randomUUID().toString()));
	}

	private ResultActions send(PersonId person, String path) throws Exception {
		return this.mvc
			.perform(post(path).with(csrf()).with(user(this.users.loadUserByUsername(person + "@club.example"))));
	}

	private ResultActions get(PersonId person, String path) throws Exception {
		return this.mvc.perform(org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get(path)
			.with(user(this.users.loadUserByUsername(person + "@club.example"))));
	}

	private String page(PersonId person, String path) throws Exception {
		return html(get(person, path));
	}

	private static String html(ResultActions sent) throws Exception {
		return sent.andExpect(status().isOk()).andReturn().getResponse().getContentAsString(StandardCharsets.UTF_8);
	}

}
