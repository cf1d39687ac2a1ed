package org.fallow.illness.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

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

/**
 * Stories of docs/stories.md that live on pages: what is asked there and left unanswered.
 */
@DatabaseTest
@Import(SettableClock.class)
class StoryPageTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	private static final String ASKED = "There is no entry from";

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

	private PersonId ada;

	private PersonId coach;

	@BeforeEach
	void makePeople() {
		this.clock.set(TODAY);
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.coach = opened(this.people.addCoach(team.id(), "Cay Coach"));
		LocalDate born = LocalDate.of(1996, 3, 1);
		this.ada = opened(this.people.addAthlete(team.id(), new NewAthlete("Ada Ashe", null, null, born, null)).id());
	}

	private PersonId opened(PersonId person) {
		this.accounts.open(person, person + "@club.example");
		return person;
	}

	/** Nothing has to be answered for the hold, and nothing but a clearance ends it. */
	@Test
	void holdsWhoTicksChestPainAndPutsThePhoneAway() throws Exception {
		morning(Map.of("symptom.CHEST_PAIN", "SEVERE")).andExpect(redirectedUrl("/slip"));
		assertThat(page(this.coach, "/board")).contains("row-refer");
		for (int day = 1; day <= 4; day++) {
			this.clock.set(TODAY.plusDays(day));
			assertThat(page(this.coach, "/board")).as("day %d", day).contains("row-refer");
			assertThat(page(this.ada, "/today")).as("day %d", day).contains("Refer", "tel:112");
		}
		assertThat(page(this.ada, "/slip")).doesNotContain("A mistake: none of these");
		morning(Map.of());
		assertThat(page(this.ada, "/today")).contains("Refer", "tel:112").doesNotContain("Full training");
		assertThat(page(this.coach, "/athletes/" + this.ada.value())).contains("Refer");
	}

	/** Half an hour is counted from the first save, though the page asked only later. */
	@Test
	void isTooLateForAMistakeOnTheSameMorningAfterTheHalfHour() throws Exception {
		morning(Map.of("symptom.CHEST_PAIN", "SEVERE"));
		this.clock.advance(Duration.ofMinutes(31));
		assertThat(page(this.ada, "/slip")).contains("tel:112").doesNotContain("A mistake: none of these");
		assertThat(page(this.ada, "/today")).contains("Refer");
	}

	@Test
	void asksEveryMorningAboutTheSilentOnesUntilItIsAnswered() throws Exception {
		morning(Map.of());
		assertThat(page(this.ada, "/today")).contains("Full training");
		for (int day = 11; day <= 12; day++) {
			this.clock.set(TODAY.plusDays(day));
			assertThat(page(this.ada, "/morning")).as("day %d", day).contains(ASKED, "name=\"meanwhile\"");
			morning(Map.of()).andExpect(redirectedUrl("/today"));
			assertThat(page(this.ada, "/today")).as("day %d", day)
				.contains("Easy only", "Not told yet: ill during the mornings without an entry")
				.doesNotContain("Full training");
			assertThat(page(this.coach, "/athletes/" + this.ada.value())).contains("Not told yet");
		}
		morning(Map.of("meanwhile", "NO", "revision", "1")).andExpect(redirectedUrl("/today"));
		assertThat(page(this.ada, "/today")).contains("Full training");
		this.clock.set(TODAY.plusDays(13));
		assertThat(page(this.ada, "/morning")).doesNotContain(ASKED);
	}

	@Test
	void restsAfterAYesUntilTheIllnessIsReported() throws Exception {
		morning(Map.of());
		this.clock.set(TODAY.plusDays(11));
		morning(Map.of("meanwhile", "YES", "meanwhileSince", TODAY.plusDays(3).toString()))
			.andExpect(redirectedUrl("/report"));
		assertThat(page(this.ada, "/today")).contains("Rest", "please report the illness").doesNotContain("Easy only");
		this.clock.set(TODAY.plusDays(12));
		morning(Map.of());
		assertThat(page(this.ada, "/today")).contains("Rest", "please report the illness");
		report("OTHER", TODAY.plusDays(3));
		assertThat(page(this.ada, "/today")).contains("Rest").doesNotContain("please report the illness");
		assertThat(page(this.coach, "/board")).contains("Rest");
	}

	private ResultActions report(String kind, LocalDate onset) throws Exception {
		return this.mvc
			.perform(sent(post("/report")).param("onset", onset.toString())
				.param("kind", kind)
				.param("worst", "4")
				.param("note", ""))
			.andExpect(status().is3xxRedirection());
	}

	private ResultActions morning(Map<String, String> told) throws Exception {
		MockHttpServletRequestBuilder form = sent(post("/morning"))
			.param("day", LocalDate.ofInstant(this.clock.instant(), ZoneOffset.UTC).toString())
			.param("feels", "WELL")
			.param("feverMedicine", "NONE");
		told.forEach(form::param);
		return this.mvc.perform(told.containsKey("revision") ? form : form.param("revision", "0"));
	}

	private MockHttpServletRequestBuilder sent(MockHttpServletRequestBuilder form) {
		return form.with(csrf())
			.with(user(this.users.loadUserByUsername(this.ada + "@club.example")))
			.param("requestId", UUID.randomUUID().toString());
	}

	private String page(PersonId person, String path) throws Exception {
		return this.mvc.perform(get(path).with(user(this.users.loadUserByUsername(person + "@club.example"))))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
	}

}
