package org.fallow.board.web;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.platform.Statements;
import org.fallow.rules.Intensity;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.fallow.training.Programmes;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * What board and roll ask of the database: as many statements for thirty athletes as for
 * three, each by an index.
 */
@DatabaseTest
@Import({ SettableClock.class, Statements.class })
class BoardStatementsTests {

	/** A Tuesday. */
	private static final LocalDate TODAY = LocalDate.of(2026, 3, 17);

	private static final int DAYS = 40;

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
	private Programmes programmes;

	@Autowired
	private Mornings mornings;

	@Autowired
	private JdbcTemplate template;

	@Autowired
	private PlatformTransactionManager transactions;

	@Autowired
	private FlywayConnectionDetails owner;

	@BeforeEach
	void setTheDay() {
		this.clock.set(TODAY);
	}

	@AfterEach
	void sendTheCrowdHome() {
		tables().sql("delete from membership where person_id in (select id from person where name = 'Crowd')").update();
		tables().sql("delete from person where name = 'Crowd'").update();
		tables().sql("delete from team where name like 'Crowd %'").update();
	}

	/** The budgets: statements of a page beside set_config and trace. */
	@ParameterizedTest
	@CsvSource({ "/board, 21", "/board?day=2026-03-10, 13", "/roll, 27" })
	void asksForThirtyAsOftenAsForThree(String path, int budget) {
		List<String> few = statements(path, squad(3));
		List<String> many = statements(path, squad(30));
		assertThat(many).as("the same statements").isEqualTo(few);
		assertThat(many.size()).isLessThanOrEqualTo(budget);
	}

	@Test
	void readsAthletesDaysByIndex() {
		PersonId coach = squad(30);
		fill(coach);
		for (String path : List.of("/board", "/board?day=2026-03-10", "/roll")) {
			List<String> asked = statements(path, coach).stream()
				.filter((sql) -> sql.matches(".*\\b(assessment|morning_entry|session_log|membership)\\b.*"))
				.toList();
			assertThat(asked).hasSizeGreaterThan(4);
			assertThat(asked).allSatisfy((sql) -> assertThat(plan(coach, sql)).as(sql)
				.doesNotContainPattern("Seq Scan on (assessment|morning_entry|session_log|membership)"));
		}
	}

	/** Or one row of a coach of ten thousand would cost a list of ten thousand. */
	@Test
	void asksWhoIsCoveredRowByRow() {
		PersonId coach = squad(3);
		fill(coach);
		String plan = plan(coach, "select * from assessment where day = ?");
		assertThat(plan).contains("SubPlan")
			.containsPattern("Index Scan using membership_\\w+ on membership")
			.doesNotContain("hashed SubPlan", "fallow_covers(");
	}

	private List<String> statements(String path, PersonId coach) {
		UserDetails details = this.users.loadUserByUsername(coach + "@club.example");
		load(path, details);
		return Statements.of(() -> load(path, details));
	}

	private void load(String path, UserDetails coach) {
		try {
			String page = this.mvc.perform(get(path).with(user(coach))).andReturn().getResponse().getContentAsString();
			assertThat(page).contains("Runner 0.", "Runner 2.");
		}
		catch (Exception ex) {
			throw new IllegalStateException(ex);
		}
	}

	/**
	 * As the application's role and for any values, as a statement is planned that is
	 * asked again and again.
	 */
	private String plan(PersonId coach, String sql) {
		StringBuilder numbered = new StringBuilder();
		int number = 0;
		for (char letter : sql.toCharArray()) {
			numbered.append((letter == '?') ? "$" + ++number : String.valueOf(letter));
		}
		String values = (number == 0) ? "" : "(" + String.join(", ", Collections.nCopies(number, "null")) + ")";
		return CurrentPerson.callAs(coach,
				() -> Objects.requireNonNull(new TransactionTemplate(this.transactions).execute((transaction) -> {
					this.template.execute("set local plan_cache_mode = force_generic_plan");
					this.template.execute("prepare asked as " + numbered);
					List<String> lines = this.template.queryForList("explain execute asked" + values, String.class);
					this.template.execute("deallocate asked");
					return String.join("\n", lines);
				})));
	}

	/** So many rows that reading them all would be dear, by the owner of the tables. */
	private void fill(PersonId coach) {
		JdbcClient tables = tables();
		tables.sql("""
				with teams as (insert into team (id, club_id, name, zone_id)
					select gen_random_uuid(), (select club_id from post where person_id = ?), 'Crowd ' || n, 'UTC'
					from generate_series(1, 300) n returning id),
				made as (insert into person (id, name, zone_id, since_day, created_at)
					select gen_random_uuid(), 'Crowd', 'UTC', date '2026-03-17', now() from generate_series(1, 3000)
					returning id)
				insert into membership (person_id, team_id, shares, joined_at)
				select m.id, t.id, true, now() from (select id, row_number() over () as n from made) m
				join (select id, row_number() over () as n from teams) t on t.n = 1 + m.n % 300""")
			.param(coach.value())
			.update();
		tables
			.sql("""
					insert into session_log (athlete_id, key, revision, day, activity, after_session, removed, zone_id, recorded_at,
						recorded_on, written_at, actor_id, role, source, request_id)
					select athlete_id, day::text, 1, day, 'RUN', '{}', false, 'UTC', recorded_at, recorded_on, written_at,
						athlete_id, 'ATHLETE', 'PAGE', gen_random_uuid() from morning_entry on conflict do nothing""")
			.update();
		tables.sql("analyze").update();
	}

	private JdbcClient tables() {
		return JdbcClient.create(new DriverManagerDataSource(this.owner.getJdbcUrl(),
				Objects.requireNonNull(this.owner.getUsername()), Objects.requireNonNull(this.owner.getPassword())));
	}

	/** Of three one is well, one is on the way back and one held. */
	private PersonId squad(int size) {
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		PersonId coach = this.people.addCoach(team.id(), "Cay");
		this.accounts.open(coach, coach + "@club.example");
		UUID group = this.people.findOrAddGroup(team.id(), "Track").id();
		program(group, coach);
		for (int i = 0; i < size; i++) {
			int kind = i % 3;
			PersonId athlete = this.people
				.addAthlete(team.id(), new NewAthlete("Runner " + i + ".", null, null, null, "Track"))
				.id();
			List<NewMorning> days = new ArrayList<>();
			for (int ago = DAYS; ago >= 0; ago--) {
				days.add(morning(kind, ago));
			}
			CurrentPerson.runAs(coach, () -> this.mornings.takeIn(athlete, days, coach));
		}
		return coach;
	}

	private static NewMorning morning(int kind, int ago) {
		NewMorning morning = NewMorning.measured(TODAY.minusDays(ago), Method.STRAP, Posture.LYING, 50.0 + ago % 4,
				60.0);
		if (kind == 1 && ago > 6 && ago < 10) {
			return morning.with(ReportedSymptom.of(Symptom.FEVERISH, Severity.MODERATE));
		}
		return (kind == 2 && ago == 5) ? morning.with(ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.MODERATE))
				: morning;
	}

	private void program(UUID group, PersonId coach) {
		PlannedSession session = new PlannedSession("k", TODAY, PlannedSession.Kind.KEY_SESSION,
				PlannedSession.Terrain.TRACK, LocalTime.of(18, 30), "", "",
				List.of(Part.of(Part.Role.BLOCK, 1800, Intensity.THRESHOLD)));
		ProgrammeWeek week = new ProgrammeWeek(TODAY.minusDays(1), ProgrammeWeek.Kind.LOADING, List.of(session));
		CurrentPerson.runAs(coach, () -> assertThat(this.programmes.write(group, week, 0, coach)).isTrue());
	}

}
