package org.fallow.account.web;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;

import jakarta.servlet.http.Cookie;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.platform.AnswerHeaders;
import org.fallow.platform.DatabaseTest;
import org.fallow.team.Club;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@DatabaseTest
class SignInTests {

	private static final String PASSWORD = "a long enough sentence";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	private String coach;

	private String athlete;

	@BeforeEach
	void openTwoAccounts() {
		Club club = this.people.foundClub("Club " + UUID.randomUUID());
		Team team = this.people.addTeam(club.id(), "Team", ZoneOffset.UTC);
		this.coach = open(this.people.addCoach(team.id(), "Cay"));
		this.athlete = open(this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id());
	}

	@Test
	void leadsACoachToTheBoardAndAnAthleteToToday() throws Exception {
		this.mvc.perform(get("/").cookie(signedIn(this.coach))).andExpect(redirectedUrl("/board"));
		this.mvc.perform(get("/").cookie(signedIn(this.athlete))).andExpect(redirectedUrl("/today"));
	}

	@Test
	void keepsAnAthleteOffTheBoard() throws Exception {
		Cookie session = signedIn(this.athlete);
		this.mvc.perform(get("/board").cookie(session)).andExpect(status().isForbidden());
		this.mvc.perform(get("/athletes/" + PersonId.next()).cookie(session)).andExpect(status().isForbidden());
	}

	@Test
	void asksForASignIn() throws Exception {
		this.mvc.perform(get("/board")).andExpect(redirectedUrl("/sign-in"));
	}

	@Test
	void refusesAWrongPassword() throws Exception {
		this.mvc.perform(post("/sign-in").with(csrf()).param("username", this.coach).param("password", "wrong"))
			.andExpect(redirectedUrl("/sign-in?failed"));
	}

	@Test
	void refusesAFormWithAWrongToken() throws Exception {
		this.mvc.perform(post("/sign-out").cookie(signedIn(this.coach)).with(csrf().useInvalidToken()))
			.andExpect(status().isForbidden());
	}

	@Test
	void showsASignInPageAnewThatStoodOpenTooLong() throws Exception {
		this.mvc.perform(post("/sign-in").with(csrf().useInvalidToken())).andExpect(redirectedUrl("/sign-in?expired"));
	}

	@ParameterizedTest
	@ValueSource(strings = { "failed:do not match", "signed-out:You are signed out", "expired:away too long" })
	void saysWhySomebodyIsHere(String reason) throws Exception {
		String[] parts = reason.split(":");
		this.mvc.perform(get("/sign-in?" + parts[0]))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString(parts[1])))
			.andExpect(content().string(not(containsString("??"))));
	}

	@Test
	void saysThatTheSessionExpired() throws Exception {
		Cookie gone = new Cookie("SESSION",
				Base64.getEncoder().encodeToString(UUID.randomUUID().toString().getBytes(StandardCharsets.UTF_8)));
		this.mvc.perform(get("/today").cookie(gone)).andExpect(redirectedUrl("/sign-in?expired"));
		this.mvc.perform(post("/sign-in").cookie(gone)).andExpect(redirectedUrl("/sign-in?expired"));
	}

	/** Or the sign-in page would appear within the old one. */
	@Test
	void tellsAPartOfAPageToLeaveIt() throws Exception {
		Cookie gone = new Cookie("SESSION",
				Base64.getEncoder().encodeToString(UUID.randomUUID().toString().getBytes(StandardCharsets.UTF_8)));
		this.mvc.perform(get("/board").header("HX-Request", "true"))
			.andExpect(status().isUnauthorized())
			.andExpect(header().string("HX-Redirect", "/sign-in"));
		this.mvc.perform(get("/board").header("HX-Request", "true").cookie(gone))
			.andExpect(status().isUnauthorized())
			.andExpect(header().string("HX-Redirect", "/sign-in?expired"));
	}

	@Test
	void signsOut() throws Exception {
		Cookie session = signedIn(this.coach);
		this.mvc.perform(post("/sign-out").cookie(session).with(csrf()))
			.andExpect(redirectedUrl("/sign-in?signed-out"));
		this.mvc.perform(get("/board").cookie(session)).andExpect(redirectedUrl("/sign-in?expired"));
	}

	@Test
	void changesTheSessionAtSignIn() throws Exception {
		Cookie before = signedIn(this.athlete);
		Cookie after = Objects.requireNonNull(this.mvc.perform(
				post("/sign-in").cookie(before).with(csrf()).param("username", this.coach).param("password", PASSWORD))
			.andReturn()
			.getResponse()
			.getCookie("SESSION"));
		assertThat(after.getValue()).isNotEqualTo(before.getValue());
	}

	@Test
	void showsTheSignInPageUnderAStrictPolicy() throws Exception {
		this.mvc.perform(get("/sign-in"))
			.andExpect(status().isOk())
			.andExpect(header().string("Content-Security-Policy", AnswerHeaders.POLICY))
			.andExpect(header().string("Referrer-Policy", "no-referrer"))
			.andExpect(header().string("Cache-Control", containsString("no-store")))
			.andExpect(content().string(containsString("name=\"_csrf\"")));
	}

	@Test
	void closesSetUpOnceThereIsAnAccount() throws Exception {
		this.mvc.perform(get("/set-up")).andExpect(redirectedUrl("/sign-in"));
		this.mvc.perform(post("/set-up").with(csrf()).param("code", "x"))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("set up already")));
	}

	private Cookie signedIn(String username) throws Exception {
		MvcResult result = this.mvc
			.perform(post("/sign-in").with(csrf())
				.param("username", username.toUpperCase(Locale.ROOT))
				.param("password", PASSWORD))
			.andExpect(redirectedUrl("/"))
			.andReturn();
		return Objects.requireNonNull(result.getResponse().getCookie("SESSION"));
	}

	private String open(PersonId person) {
		String username = person + "@club.example";
		this.accounts.open(person, username, PASSWORD);
		return username;
	}

}
