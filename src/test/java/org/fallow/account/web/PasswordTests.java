package org.fallow.account.web;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.fallow.account.Accounts;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.fallow.wording.Message;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.RequestBuilder;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@DatabaseTest
class PasswordTests {

	private static final String WANTED = "a sentence of one's own";

	private static final String PRESENT = "the sentence so far";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	private String username;

	private UserDetails coach;

	@BeforeEach
	void openAnAccount() {
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		PersonId person = this.people.addCoach(team.id(), "Cay");
		this.username = person + "@club.example";
		this.accounts.open(person, this.username, PRESENT);
		this.coach = this.users.loadUserByUsername(this.username);
	}

	@Test
	void changesThePassword() throws Exception {
		this.mvc.perform(change(PRESENT, WANTED, WANTED))
			.andExpect(redirectedUrl("/password"))
			.andExpect(flash().attribute("notice", Message.of("password.changed")));
		assertThat(html(get("/password").with(user(this.coach)))).contains("all your other devices");
	}

	@Test
	void signsInWithTheNewPasswordOnly() throws Exception {
		this.mvc.perform(change(PRESENT, WANTED, WANTED));
		this.mvc.perform(signIn(PRESENT)).andExpect(redirectedUrl("/sign-in?failed"));
		this.mvc.perform(signIn(WANTED)).andExpect(redirectedUrl("/"));
	}

	@ParameterizedTest
	@CsvSource({ "wrong,a long enough one,a long enough one,present", "PRESENT,short,short,wanted",
			"PRESENT,a long enough one,a long enough two,again", "PRESENT,PRESENT,PRESENT,wanted",
			"PRESENT,password1234,password1234,wanted" })
	void refusesAndSendsNoPasswordBack(String present, String wanted, String again, String field) throws Exception {
		String html = html(change(real(present), real(wanted), real(again)));
		assertThat(html).contains("id=\"" + field + "-problem\"").doesNotContain("long enough", PRESENT);
		this.mvc.perform(signIn(PRESENT)).andExpect(redirectedUrl("/"));
	}

	@Test
	void asksForASignIn() throws Exception {
		this.mvc.perform(get("/password")).andExpect(redirectedUrl("/sign-in"));
	}

	private static String real(String password) {
		return password.equals("PRESENT") ? PRESENT : password;
	}

	private MockHttpServletRequestBuilder change(String present, String wanted, String again) {
		return post("/password").with(csrf())
			.with(user(this.coach))
			.param("present", present)
			.param("wanted", wanted)
			.param("again", again);
	}

	private MockHttpServletRequestBuilder signIn(String password) {
		return post("/sign-in").with(csrf()).param("username", this.username).param("password", password);
	}

	private String html(RequestBuilder request) throws Exception {
		String html = this.mvc.perform(request)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
		assertThat(html).doesNotContain("??");
		return html;
	}

}
