package org.fallow.board.web;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.view.StateView;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Clearance;
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
import org.springframework.ui.ModelMap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * The server's clock ran ten days ahead and was put right: the days decided meanwhile lie
 * in the future, and Today, the board and the athlete's page say the same.
 */
@DatabaseTest
@Import(SettableClock.class)
class ClockAheadTests {

	private static final LocalDate TENTH = LocalDate.of(2026, 3, 10);

	private static final Duration AHEAD = Duration.ofDays(10);

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

	private UserDetails coach;

	private UserDetails self;

	private PersonId athlete;

	@BeforeEach
	void addPeople() throws Exception {
		this.clock.set(TENTH.minusDays(1));
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.coach = account(this.people.addCoach(team.id(), "Cay"));
		this.athlete = this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id();
		this.self = account(this.athlete);
		save(well(TENTH.minusDays(1)));
		this.clock.set(TENTH);
	}

	@Test
	void daysThatNobodyLivedSayNothing() throws Exception {
		lookWithTheClockAhead();
		save(well(TENTH));
		assertEverywhere(Clearance.FULL_TRAINING);
	}

	@Test
	void whatWasEnteredBeforeTheClockRanAheadStands() throws Exception {
		save(well(TENTH));
		lookWithTheClockAhead();
		assertEverywhere(Clearance.FULL_TRAINING);
		this.clock.advance(Duration.ofDays(1));
		assertEverywhere(Clearance.NOT_ASSESSED);
		save(well(TENTH.plusDays(1)));
		assertEverywhere(Clearance.FULL_TRAINING);
	}

	@Test
	void aHoldThatWasEnteredWhileTheClockWasAheadIsNotOutOfSight() throws Exception {
		save(well(TENTH));
		this.clock.advance(AHEAD);
		save(well(TENTH.plusDays(10)).with(ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.MODERATE)));
		this.clock.advance(AHEAD.negated());
		assertEverywhere(Clearance.REFER);
		save(well(TENTH).basedOn(1));
		assertEverywhere(Clearance.REFER);
		this.clock.advance(Duration.ofDays(1));
		assertEverywhere(Clearance.REFER);
	}

	@Test
	void aGoodMorningOfADayThatIsNotYetLoosensNothing() throws Exception {
		save(well(TENTH).with(ReportedSymptom.of(Symptom.SNEEZING, Severity.MILD)));
		this.clock.advance(AHEAD);
		save(well(TENTH.plusDays(10)));
		this.clock.advance(AHEAD.negated());
		assertEverywhere(Clearance.EASY_ONLY);
	}

	private void lookWithTheClockAhead() throws Exception {
		this.clock.advance(AHEAD);
		assertEverywhere(Clearance.NOT_ASSESSED);
		this.clock.advance(AHEAD.negated());
	}

	private void assertEverywhere(Clearance clearance) throws Exception {
		assertThat(onBoard()).as("board").isEqualTo(clearance);
		assertThat(state("/today", this.self)).as("today").isEqualTo(clearance);
		assertThat(state("/athletes/" + this.athlete.value(), this.coach)).as("athlete's page").isEqualTo(clearance);
		assertThat(onBoard()).as("board once more").isEqualTo(clearance);
	}

	private Clearance onBoard() throws Exception {
		return ((List<?>) Objects.requireNonNull(model("/board", this.coach).get("rows"))).stream()
			.map(BoardRow.class::cast)
			.map(BoardRow::clearance)
			.findFirst()
			.orElseThrow();
	}

	private Clearance state(String path, UserDetails reader) throws Exception {
		return ((StateView) Objects.requireNonNull(model(path, reader).get("state"))).clearance();
	}

	private ModelMap model(String path, UserDetails reader) throws Exception {
		return Objects.requireNonNull(this.mvc.perform(get(path).with(user(reader))).andReturn().getModelAndView())
			.getModelMap();
	}

	private UserDetails account(PersonId person) {
		this.accounts.open(person, person + "@club.example");
		return this.users.loadUserByUsername(person + "@club.example");
	}

	private void save(NewMorning morning) {
		assertThat(this.mornings.save(this.athlete, morning, Submission.page(this.athlete, Role.ATHLETE, Ids.next())))
			.isInstanceOf(Saved.Stored.class);
	}

	private static NewMorning well(LocalDate day) {
		return NewMorning.measured(day, Method.STRAP, Posture.LYING, 50.0, null);
	}

}
