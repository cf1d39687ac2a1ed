package org.fallow.training.web;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/** A group's programme where the team's week has begun before the one of UTC. */
@DatabaseTest
@Import(SettableClock.class)
class ProgrammePageTests {

	private static final ZoneId AUCKLAND = ZoneId.of("Pacific/Auckland");

	private static final LocalDate MONDAY = LocalDate.of(2026, 3, 9);

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

	private UserDetails coach;

	private String programme;

	@BeforeEach
	void addATeam() {
		this.clock.set(MONDAY, LocalTime.of(7, 0), AUCKLAND);
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", AUCKLAND);
		this.programme = "/programme/" + this.people.findOrAddGroup(team.id(), "Track").id();
		PersonId id = this.people.addCoach(team.id(), "Cay");
		this.accounts.open(id, id + "@club.example");
		this.coach = this.users.loadUserByUsername(id + "@club.example");
	}

	@Test
	void opensWithTheWeekOfTheTeam() throws Exception {
		assertThat(html(get(this.programme))).contains("name=\"week\" value=\"2026-03-09\"");
	}

	@Test
	void countsTheWeeksOfAFileFromTheTeamsWeek() throws Exception {
		LocalDate last = MONDAY.plusWeeks(52);
		sent("", last.toString(), "EASY_RUN", "40 min easy").andExpect(status().is3xxRedirection());
		assertThat(html(get(this.programme + "/file.csv"))).contains(last.plusDays(1).toString());
	}

	@ParameterizedTest
	@ValueSource(strings = { "+999999999-12-31", "-999999999-01-01", "2200-01-06", "1999-12-27", "soon", "2026-02-30" })
	void saysThatAWeekCannotBeShown(String week) throws Exception {
		assertThat(html(get(this.programme).param("week", week))).contains("There is no such week here",
				"name=\"week\" value=\"2026-03-09\"");
	}

	@ParameterizedTest
	@ValueSource(strings = { "+999999999-12-31", "-999999999-01-01", "2200-01-06", "1999-12-27", "soon", "2026-02-30" })
	void writesNoWeekThatCannotBeShown(String week) throws Exception {
		for (String action : List.of("", "/back", "/copy")) {
			sent(action, week, "EASY_RUN", "40 min easy").andExpect(status().isBadRequest());
		}
	}

	@Test
	void copiesNoWeekBeyondTheLast() throws Exception {
		sent("/copy", "2199-12-30", "EASY_RUN", "40 min easy").andExpect(status().isBadRequest());
	}

	@Test
	void tellsOfAnUnknownKindOfSessionBesideAnUnreadablePart() throws Exception {
		String html = sent("", MONDAY.toString(), "JOG", "soon").andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
		assertThat(html).contains("href=\"#kind0\"", "href=\"#parts0\"", "Fallow does not know")
			.doesNotContain("A session takes from");
	}

	private ResultActions sent(String action, String week, String kind, String parts) throws Exception {
		return this.mvc.perform(post(this.programme + action).with(csrf())
			.with(user(this.coach))
			.param("week", week)
			.param("revision", "0")
			.param("kind", "LOADING")
			.param("day0", "2")
			.param("kind0", kind)
			.param("terrain0", "FLAT")
			.param("parts0", parts));
	}

	private String html(MockHttpServletRequestBuilder asked) throws Exception {
		return this.mvc.perform(asked.with(user(this.coach)))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
	}

}
