package org.fallow.board.web;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Clearance;
import org.fallow.account.Accounts;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.web.servlet.ModelAndView;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/** A board of a team in UTC with an athlete whose day has begun earlier, or later. */
@DatabaseTest
@Import(SettableClock.class)
class BoardZonesTests {

	private static final LocalDate TENTH = LocalDate.of(2026, 3, 10);

	private static final ZoneId TONGA = ZoneId.of("Pacific/Tongatapu");

	private static final ZoneId HAWAII = ZoneId.of("Pacific/Honolulu");

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
	private Mornings mornings;

	private Team team;

	private UserDetails coach;

	@BeforeEach
	void addACoach() {
		this.clock.set(TENTH.minusDays(3));
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		PersonId id = this.people.addCoach(this.team.id(), "Cay");
		this.accounts.open(id, id + "@club.example");
		this.coach = this.users.loadUserByUsername(id + "@club.example");
	}

	@Test
	void showsTheLatestOwnDayWhereTheTeamsHasNotBegun() throws Exception {
		PersonId behind = athlete("Hana", HAWAII);
		this.clock.set(TENTH.minusDays(1), LocalTime.of(7, 0), HAWAII);
		save(behind, well(TENTH.minusDays(1)));
		this.clock.set(TENTH, LocalTime.of(7, 0), HAWAII);
		save(behind, chestPain(TENTH));
		this.clock.set(TENTH.plusDays(1), LocalTime.of(6, 0), ZoneOffset.UTC);
		assertThat(row("/board", "Hana").clearance()).as("still the 10th in Hawaii").isEqualTo(Clearance.REFER);
		assertThat(row("/board?day=2026-03-09", "Hana").clearance()).as("before it").isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void showsAHoldOfADayThatTheTeamHasNotBegun() throws Exception {
		PersonId ahead = athlete("Tevita", TONGA);
		this.clock.set(TENTH, LocalTime.of(7, 0), TONGA);
		save(ahead, well(TENTH));
		this.clock.set(TENTH.plusDays(1), LocalTime.of(7, 0), TONGA);
		assertThat(row("/board", "Tevita").clearance()).isEqualTo(Clearance.FULL_TRAINING);
		save(ahead, chestPain(TENTH.plusDays(1)));
		assertThat(row("/board", "Tevita").clearance()).as("the 10th in UTC").isEqualTo(Clearance.REFER);
		this.clock.set(TENTH.plusDays(1));
		assertThat(row("/board?day=2026-03-10", "Tevita").clearance()).as("a past day stays as it was decided")
			.isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void doesNotLoosenByADayThatTheTeamHasNotBegun() throws Exception {
		PersonId ahead = athlete("Tevita", TONGA);
		this.clock.set(TENTH, LocalTime.of(7, 0), TONGA);
		save(ahead, well(TENTH).with(ReportedSymptom.of(Symptom.SNEEZING, Severity.MILD)));
		this.clock.set(TENTH.plusDays(1), LocalTime.of(7, 0), TONGA);
		save(ahead, well(TENTH.plusDays(1)));
		assertThat(row("/board", "Tevita").clearance()).isEqualTo(Clearance.EASY_ONLY);
	}

	private PersonId athlete(String name, ZoneId zone) {
		return this.people.addAthlete(this.team.id(), new NewAthlete(name, null, zone, null, null)).id();
	}

	private static NewMorning well(LocalDate day) {
		return NewMorning.measured(day, Method.STRAP, Posture.LYING, 50.0, null);
	}

	private static NewMorning chestPain(LocalDate day) {
		return well(day).with(ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.MODERATE));
	}

	private void save(PersonId id, NewMorning morning) {
		assertThat(this.mornings.save(id, morning, Submission.page(id, Role.ATHLETE, Ids.next())))
			.isInstanceOf(Saved.Stored.class);
	}

	private BoardRow row(String path, String name) throws Exception {
		ModelAndView page = this.mvc.perform(get(path).with(user(this.coach))).andReturn().getModelAndView();
		List<?> rows = (List<?>) Objects.requireNonNull(page).getModel().get("rows");
		return rows.stream()
			.map(BoardRow.class::cast)
			.filter((row) -> row.name().equals(name))
			.findFirst()
			.orElseThrow();
	}

}
