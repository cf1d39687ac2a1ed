package org.fallow.account.web;

import java.time.ZoneOffset;

import jakarta.servlet.http.Cookie;
import org.fallow.access.PersonId;
import org.fallow.team.NewAthlete;
import org.fallow.team.Team;
import org.junit.jupiter.api.Test;

import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

class ResetLinkTests extends SignInTestCase {

	@Test
	void showsAHeadCoachALinkForAnAthleteOfTheTeam() throws Exception {
		String html = html(link(this.ann, signedIn(this.cay)), 200);
		assertThat(html).contains("Ann chooses a new password", "within 24 hours");
		String path = html.replaceAll("(?s).*http://localhost:8080(/reset/[A-Za-z0-9_-]{43}).*", "$1");
		this.mvc.perform(get(path)).andExpect(redirectedUrl("/reset"));
	}

	@Test
	void knowsNobodyOfOtherTeams() throws Exception {
		Team other = this.people.addTeam(this.team.clubId(), "Other", ZoneOffset.UTC);
		PersonId ben = this.people.addAthlete(other.id(), NewAthlete.named("Ben")).id();
		open(ben);
		Cookie session = signedIn(this.cay);
		assertThat(html(link(ben, session), 404)).doesNotContain("Ben");
		html(link(PersonId.next(), session), 404);
	}

	@Test
	void knowsNoAccountThatIsNotThere() throws Exception {
		PersonId dee = this.people.addAthlete(this.team.id(), NewAthlete.named("Dee")).id();
		html(link(dee, signedIn(this.cay)), 404);
	}

	@Test
	void handsNobodyOverWhoCanDoMore() throws Exception {
		Team other = this.people.addTeam(this.team.clubId(), "Other", ZoneOffset.UTC);
		PersonId elsewhere = this.people.addCoach(this.team.id(), "Eve");
		this.people.alsoCoaches(other.id(), elsewhere);
		open(elsewhere);
		PersonId owner = this.people.addAthlete(this.team.id(), NewAthlete.named("Olu")).id();
		this.people.owns(this.team.clubId(), owner);
		open(owner);
		PersonId peer = this.people.addCoach(this.team.id(), "Pat");
		open(peer);
		Cookie session = signedIn(this.cay);
		html(link(elsewhere, session), 404);
		html(link(owner, session), 404);
		html(link(this.cay, session), 404);
		html(link(peer, session), 200);
	}

	@Test
	void keepsAthletesOut() throws Exception {
		this.mvc.perform(link(this.ann, signedIn(this.ann))).andExpect(status().isForbidden());
		this.mvc.perform(post("/people/" + this.ann + "/reset-link").with(csrf())).andExpect(redirectedUrl("/sign-in"));
	}

	private static MockHttpServletRequestBuilder link(PersonId person, Cookie session) {
		return post("/people/" + person + "/reset-link").with(csrf()).cookie(session);
	}

}
