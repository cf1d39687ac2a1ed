package org.fallow.measure;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.account.Accounts;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.platform.DatabaseTest;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * What the database's row policies cost: the same board and the same entry with the
 * policies and without them, by turns in one run. By hand, as docs/security.md says; its
 * figures stand there.
 */
@Tag("measure")
@DatabaseTest
class PolicyCostTests {

	private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

	private static final int DAYS = 40;

	private static final int ROUNDS = 12;

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

	@Autowired
	private FlywayConnectionDetails owner;

	@Test
	void tellsTheRatio() throws Exception {
		Squads small = squad(24);
		Squads large = squad(500);
		jdbc().sql("analyze").update();
		System.out.println("squads are there");
		report("board of 24", () -> board(small), 20);
		report("board of 500", () -> board(large), 4);
		int[] number = new int[1];
		report("one entry", () -> enter(large.athletes().get(number[0]++ % 500), number[0] / 500), 40);
	}

	private void report(String what, Work work, int times) throws Exception {
		List<Double> with = new ArrayList<>();
		List<Double> without = new ArrayList<>();
		for (int round = 0; round < ROUNDS; round++) {
			policies("enable");
			with.add(milliseconds(work, times));
			policies("disable");
			without.add(milliseconds(work, times));
		}
		policies("enable");
		double[] ratios = new double[ROUNDS];
		for (int i = 0; i < ROUNDS; i++) {
			ratios[i] = with.get(i) / without.get(i);
		}
		Arrays.sort(ratios);
		System.out.printf(Locale.ROOT, "%s: %.2f ms with policies, %.2f ms without, ratio %.2f (%.2f to %.2f)%n", what,
				median(with), median(without), (ratios[ROUNDS / 2 - 1] + ratios[ROUNDS / 2]) / 2, ratios[0],
				ratios[ROUNDS - 1]);
	}

	private static double milliseconds(Work work, int times) throws Exception {
		work.run();
		work.run();
		long begun = System.nanoTime();
		for (int i = 0; i < times; i++) {
			work.run();
		}
		return (System.nanoTime() - begun) / 1e6 / times;
	}

	private static double median(List<Double> values) {
		List<Double> sorted = values.stream().sorted().toList();
		return (sorted.get(ROUNDS / 2 - 1) + sorted.get(ROUNDS / 2)) / 2;
	}

	private void board(Squads squad) throws Exception {
		String page = this.mvc.perform(get("/board").with(user(squad.coach())))
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(page).contains("Athlete 0.", "Athlete " + (squad.athletes().size() - 1) + ".");
	}

	private void enter(PersonId athlete, int turn) {
		CurrentPerson
			.runAs(athlete,
					() -> assertThat(this.mornings.save(athlete,
							NewMorning.measured(TODAY.minusDays(DAYS + 1 + turn), Method.STRAP, Posture.LYING, 50.0,
									null),
							Submission.page(athlete, Role.ATHLETE, UUID.randomUUID())))
						.isInstanceOf(Saved.Stored.class));
	}

	private void policies(String verb) {
		List<String> tables = jdbc()
			.sql("select distinct c.relname from pg_class c join pg_policy p on p.polrelid = c.oid")
			.query(String.class)
			.list();
		assertThat(tables).hasSizeGreaterThan(15);
		tables.forEach((table) -> jdbc().sql("alter table " + table + " " + verb + " row level security").update());
	}

	private JdbcClient jdbc() {
		return JdbcClient.create(new DriverManagerDataSource(this.owner.getJdbcUrl(),
				Objects.requireNonNull(this.owner.getUsername()), Objects.requireNonNull(this.owner.getPassword())));
	}

	private Squads squad(int size) {
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		PersonId coach = this.people.addCoach(team.id(), "Cay");
		List<PersonId> athletes = new ArrayList<>();
		for (int i = 0; i < size; i++) {
			PersonId athlete = this.people.addAthlete(team.id(), NewAthlete.named("Athlete " + i + ".")).id();
			List<NewMorning> history = new ArrayList<>();
			for (int day = DAYS; day > 0; day--) {
				history
					.add(NewMorning.measured(TODAY.minusDays(day), Method.STRAP, Posture.LYING, 50.0 + day % 4, null));
			}
			CurrentPerson.runAs(coach, () -> this.mornings.takeIn(athlete, history, coach));
			athletes.add(athlete);
		}
		this.accounts.open(coach, coach + "@club.example", "a long enough sentence");
		return new Squads(athletes, Purpose.SIGN_IN.call(() -> this.users.loadUserByUsername(coach + "@club.example")));
	}

	@FunctionalInterface
	private interface Work {

		void run() throws Exception;

	}

	private record Squads(List<PersonId> athletes, UserDetails coach) {
	}

}
