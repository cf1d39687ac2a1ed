package org.fallow.illness;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.account.Accounts;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/** The forms for what clinicians, coaches and athletes say, as a browser sends them. */
@DatabaseTest
@NobodyOperates
class ClinicPagesTests {

	private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	private PersonId ann;

	private UserDetails athlete;

	private UserDetails alone;

	private UserDetails coach;

	@BeforeEach
	void addAnAthlete() {
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		Team team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		this.ann = added(team, "Ann");
		this.athlete = signedIn(this.ann);
		this.coach = signedIn(this.people.addCoach(team.id(), "Cay"));
		UUID empty = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.alone = signedIn(added(this.people.addTeam(empty, "Empty", ZoneOffset.UTC), "Lou"));
	}

	private PersonId added(Team team, String name) {
		return this.people.addAthlete(team.id(), new NewAthlete(name, null, null, LocalDate.of(1990, 1, 2), null)).id();
	}

	private UserDetails signedIn(PersonId person) {
		String username = person + "@club.example";
		this.accounts.open(person, username, "a long enough sentence");
		return Purpose.SIGN_IN.call(() -> this.users.loadUserByUsername(username));
	}

	@Test
	void letsWhoIsAllThereIsTellOfAClearance() throws Exception {
		redFlag(this.alone);
		assertThat(html(get("/today"), this.alone)).contains("href=\"/clearance\"");
		MockHttpServletRequestBuilder told = post("/clearance").param("who", "Dr Hill")
			.param("role", "GP")
			.param("from", TODAY.toString());
		assertThat(html(told, this.alone)).contains("rest, easy running or full training");
		assertThat(html(told.param("scope", "FULL"), this.alone)).contains("allows rest or easy running");
		assertThat(redirect(post("/clearance").param("who", "Dr Hill")
			.param("role", "GP")
			.param("from", TODAY.toString())
			.param("scope", "EASY"), this.alone)).isEqualTo("/today");
		assertThat(html(get("/today"), this.alone)).contains("told by the athlete").doesNotContain("\"/clearance\"");
	}

	@Test
	void asksForWhatOnlyAPhysicianCanSay() throws Exception {
		redFlag(this.athlete);
		String page = "/athletes/" + this.ann + "/clearance";
		assertThat(html(form(page, "FULL"), this.coach)).contains("Say whose word it is");
		assertThat(html(form(page, "FULL").param("by", "CLINICIAN").param("noIllness", "true"), this.coach))
			.contains("Only a physician can say so", "On which day did the physician examine");
		assertThat(html(form(page, "FULL").param("by", "PHYSICIAN").param("examined", "FAINTING"), this.coach))
			.contains("can be examined and passed over");
		assertThat(html(form(page, "EASY").param("by", "PHYSICIAN")
			.param("noIllness", "true")
			.param("examinedOn", TODAY.toString()), this.coach)).contains("goes with full training");
		assertThat(html(form(page, "FULL").param("by", "PHYSICIAN").param("until", TODAY.plusYears(9).toString()),
				this.coach))
			.contains("Is the year right?");
		assertThat(redirect(form(page, "FULL").param("by", "PHYSICIAN")
			.param("noIllness", "true")
			.param("examined", "PALPITATIONS")
			.param("examinedOn", TODAY.toString()), this.coach)).isEqualTo("/athletes/" + this.ann);
		assertThat(html(get("/athletes/" + this.ann), this.coach)).contains("no illness", "the episode closes on");
		assertThat(html(get("/morning"), this.athlete)).contains("Exactly as the physician examined it?");
	}

	@Test
	void showsACeilingWithReasonAndLastDayAndLiftsIt() throws Exception {
		String page = "/athletes/" + this.ann + "/decision";
		MockHttpServletRequestBuilder wrong = post(page + "/stricter").param("ceiling", "REST")
			.param("until", TODAY.plusYears(10).toString())
			.param("reason", "a plover was calling");
		assertThat(html(wrong, this.coach)).contains("Is the year right?", "a plover was calling");
		assertThat(html(post(page + "/stricter").param("ceiling", "REST").param("reason", "x"), this.coach))
			.contains("Name its last day");
		redirect(post(page + "/stricter").param("ceiling", "REST")
			.param("until", TODAY.plusDays(9).toString())
			.param("reason", "a plover was calling"), this.coach);
		assertThat(html(get("/today"), this.athlete)).contains("a plover was calling", "Cay");
		assertThat(html(get("/athletes/" + this.ann), this.coach)).contains("a plover was calling");
		String key = html(get(page), this.coach).replaceAll("(?s).*name=\"names\" value=\"([^\"]+)\".*", "$1");
		redirect(post(page + "/lift").param("names", key).param("reason", "she rested"), this.coach);
		assertThat(html(get("/today"), this.athlete)).doesNotContain("a plover was calling");
		assertThat(html(get("/athletes/" + this.ann), this.coach)).contains("she rested", "a plover was calling");
	}

	private static MockHttpServletRequestBuilder form(String page, String scope) {
		return post(page).param("who", "Dr Hill")
			.param("role", "GP")
			.param("scope", scope)
			.param("from", TODAY.toString());
	}

	private void redFlag(UserDetails who) throws Exception {
		redirect(post("/morning").param("day", TODAY.toString())
			.param("symptom.PALPITATIONS", "SEVERE")
			.param("redFlagConfirmed", "true"), who);
	}

	private String html(MockHttpServletRequestBuilder request, UserDetails who) throws Exception {
		return this.mvc.perform(request.with(csrf()).with(user(who))).andReturn().getResponse().getContentAsString();
	}

	private String redirect(MockHttpServletRequestBuilder request, UserDetails who) throws Exception {
		return this.mvc.perform(request.with(csrf()).with(user(who))).andReturn().getResponse().getRedirectedUrl();
	}

}
