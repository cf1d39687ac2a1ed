package org.fallow.account.web;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.account.Joining;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.platform.SettableClock;
import org.fallow.rules.RuleDrafts;
import org.fallow.team.Invitation;
import org.fallow.team.Invitations;
import org.fallow.team.Member;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewInvitation;
import org.fallow.team.People;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

/** Where it is Monday already in Auckland, and Sunday in UTC, Monday is the day. */
@DatabaseTest
@NobodyOperates
@Import(SettableClock.class)
class TeamsDayTests {

	private static final ZoneId AUCKLAND = ZoneId.of("Pacific/Auckland");

	private static final LocalDate MONDAY = LocalDate.of(2026, 3, 9);

	private static final LocalDate EIGHTEEN_TODAY = MONDAY.minusYears(18);

	@Autowired
	private SettableClock clock;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Squad squad;

	@Autowired
	private Accounts accounts;

	@Autowired
	private Invitations invitations;

	@Autowired
	private Joining joining;

	@Autowired
	private RuleDrafts drafts;

	@Autowired
	private UserDetailsService users;

	private Team team;

	private PersonId coachId;

	private UserDetails coach;

	@BeforeEach
	void addATeam() {
		this.clock.set(MONDAY, LocalTime.of(7, 0), AUCKLAND);
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", AUCKLAND);
		this.coachId = this.people.addCoach(this.team.id(), "Cay");
		this.accounts.open(this.coachId, this.coachId + "@club.example");
		this.coach = this.users.loadUserByUsername(this.coachId + "@club.example");
	}

	@Test
	void takesTheWordOfSomebodyWhoIsEighteenThere() throws Exception {
		this.mvc
			.perform(post("/people").with(csrf())
				.with(user(this.coach))
				.param("name", "Eve")
				.param("teamId", this.team.id().toString())
				.param("birthDate", EIGHTEEN_TODAY.toString())
				.param("basis", "OWN_WORD"))
			.andExpect(redirectedUrl("/people"));
		assertThat(CurrentPerson.callAs(this.coachId, () -> this.squad.membersOf(this.coachId))).singleElement()
			.extracting(Member::under18)
			.isEqualTo(false);
	}

	@Test
	void asksNoGuardianOfSomebodyWhoIsEighteenThere() {
		Invitation fresh = invited(
				new NewInvitation(null, this.team.clubId(), this.team.id(), "Eve", null, List.of(), false, null));
		assertThat(this.joining.asksGuardian(fresh, EIGHTEEN_TODAY)).isFalse();
		assertThat(this.joining.asksGuardian(fresh, EIGHTEEN_TODAY.plusDays(1))).isTrue();
	}

	@Test
	void goesByTheZoneOfAnAthleteOnFile() {
		NewAthlete athlete = new NewAthlete("Hana", null, ZoneId.of("Pacific/Honolulu"), EIGHTEEN_TODAY, null);
		Invitation onFile = invited(NewInvitation.onFile(
				CurrentPerson.callAs(this.coachId, () -> this.people.addAthlete(this.team.id(), athlete)),
				this.team.clubId()));
		assertThat(this.joining.asksGuardian(onFile, EIGHTEEN_TODAY)).as("the 8th in Hawaii").isTrue();
		assertThat(this.joining.asksGuardian(onFile, EIGHTEEN_TODAY.minusDays(1))).isFalse();
	}

	@Test
	void adoptsNoRulesForTheTeamsToday() {
		assertThat(CurrentPerson.callAs(this.coachId, () -> this.drafts.earliestDay(this.team.id())))
			.isEqualTo(MONDAY.plusDays(1));
	}

	private Invitation invited(NewInvitation offer) {
		return CurrentPerson.callAs(this.coachId, () -> {
			assertThat(this.invitations.make(offer, this.coachId)).isPresent();
			return this.invitations.open(List.of(this.team.id()), List.of()).get(0);
		});
	}

}
