package org.fallow.illness;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.Recording;
import org.fallow.entry.Submission;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.platform.OneNode;
import org.fallow.platform.SettableClock;
import org.fallow.platform.Statements;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.eq;
import static org.mockito.BDDMockito.willAnswer;
import static org.mockito.BDDMockito.willThrow;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.times;
import static org.mockito.Mockito.verify;

/** Long ago, so that nobody of another test is behind. */
@DatabaseTest
@NobodyOperates
@Import({ SettableClock.class, Statements.class })
class SilentDaysTests {

	private static final LocalDate FIRST = LocalDate.of(2001, 3, 10);

	private static final ZoneId TONGA = ZoneId.of("Pacific/Tongatapu");

	private static final ZoneId HAWAII = ZoneId.of("Pacific/Honolulu");

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Assessments assessments;

	@Autowired
	private SilentDays silentDays;

	@Autowired
	private BehindRows rows;

	@Autowired
	private Recording recording;

	@Autowired
	private OneNode oneNode;

	@Autowired
	private JdbcTemplate jdbc;

	@Autowired
	private PlatformTransactionManager manager;

	@Autowired
	private FlywayConnectionDetails details;

	@Test
	void decidesTheDaysOfThoseBehindAndAsksForNobodyElse() {
		this.clock.set(FIRST.plusDays(2));
		this.silentDays.bringEveryoneToToday();
		this.clock.set(FIRST);
		List<PersonId> athletes = Stream.generate(() -> athlete(ZoneOffset.UTC)).limit(3).toList();
		this.clock.set(FIRST.plusDays(2));
		enter(athletes.get(0), FIRST.plusDays(2));

		List<String> first = Statements.of(this.silentDays::bringEveryoneToToday);

		assertThat(athletes)
			.allSatisfy((id) -> assertThat(decided(id)).containsExactly(FIRST, FIRST.plusDays(1), FIRST.plusDays(2)));
		assertThat(first).filteredOn((sql) -> sql.contains("update athlete_status set version")).hasSize(2);
		assertThat(Statements.of(this.silentDays::bringEveryoneToToday)).as("however many they are").hasSize(4);
	}

	@Test
	void comparesWithTheTodayOfEachZone() {
		this.clock.set(FIRST, LocalTime.of(10, 0), ZoneOffset.UTC);
		PersonId hawaii = athlete(HAWAII);
		PersonId tonga = athlete(TONGA);
		assertThat(decided(hawaii)).containsExactly(FIRST);
		this.clock.set(FIRST, LocalTime.of(11, 30), ZoneOffset.UTC);

		this.silentDays.bringEveryoneToToday();

		assertThat(decided(hawaii)).containsExactly(FIRST);
		assertThat(decided(tonga)).endsWith(FIRST.plusDays(1));
		this.clock.set(FIRST.plusDays(1), LocalTime.of(9, 59), ZoneOffset.UTC);
		this.silentDays.bringEveryoneToToday();
		assertThat(decided(hawaii)).containsExactly(FIRST);
		this.clock.set(FIRST.plusDays(1), LocalTime.of(10, 0), ZoneOffset.UTC);
		this.silentDays.bringEveryoneToToday();
		assertThat(decided(hawaii)).containsExactly(FIRST, FIRST.plusDays(1));
	}

	@Test
	void goesAlongWithAMove() {
		this.clock.set(FIRST, LocalTime.of(20, 0), HAWAII);
		PersonId id = athlete(HAWAII);
		CurrentPerson.runAs(id, () -> new TransactionTemplate(this.manager).executeWithoutResult(
				(status) -> this.jdbc.update("update person set zone_id = ? where id = ?", TONGA.getId(), id.value())));

		this.silentDays.bringEveryoneToToday();

		assertThat(decided(id)).containsExactly(FIRST, FIRST.plusDays(1));
	}

	@Test
	void anErrorOfOneStopsNobodyAndIsNotTriedAgainAtOnce() {
		this.clock.set(FIRST);
		PersonId broken = athlete(ZoneOffset.UTC);
		PersonId other = athlete(ZoneOffset.UTC);
		this.clock.set(FIRST.plusDays(1));
		Assessments some = mock(Assessments.class);
		willAnswer((call) -> {
			this.assessments.bringUpTo(call.<Collection<PersonId>>getArgument(0), call.getArgument(1));
			return null;
		}).given(some).bringUpTo(any(), any());
		willThrow(new IllegalStateException("broken")).given(some).bringUpTo(eq(List.of(broken)), any());

		new SilentDays(this.rows, some, this.recording, this.oneNode).bringEveryoneToToday();

		assertThat(decided(other)).endsWith(FIRST.plusDays(1));
		assertThat(decided(broken)).containsExactly(FIRST);
		verify(some, times(1)).bringUpTo(eq(List.of(broken)), any());
		this.silentDays.bringEveryoneToToday();
		assertThat(decided(broken)).endsWith(FIRST.plusDays(1));
	}

	@Test
	void oneNodeDoesItAtATime() {
		AtomicBoolean ran = new AtomicBoolean();
		boolean done = this.oneNode.tryToRun(1, () -> {
			assertThat(elsewhere(1, ran)).isFalse();
			assertThat(ran).isFalse();
			assertThat(elsewhere(2, ran)).isTrue();
		});
		assertThat(done).isTrue();
		assertThatExceptionOfType(IllegalStateException.class).isThrownBy(() -> this.oneNode.tryToRun(1, () -> {
			throw new IllegalStateException();
		}));
		assertThat(elsewhere(1, ran)).isTrue();
	}

	private boolean elsewhere(long work, AtomicBoolean ran) {
		return CompletableFuture.supplyAsync(() -> this.oneNode.tryToRun(work, () -> ran.set(true))).join();
	}

	@Test
	void tellsNobodyWhoIsBehind() {
		this.clock.set(FIRST);
		PersonId id = athlete(ZoneOffset.UTC);
		TreeMap<String, LocalDate> today = new TreeMap<>();
		today.put("Z", FIRST.plusDays(1));

		assertThat(Purpose.OPERATION.call(() -> this.rows.behind(today, List.of(), 10)))
			.contains(new BehindRows.Behind(id, FIRST.plusDays(1)));
		assertThat(this.rows.behind(today, List.of(), 10)).isEmpty();
		assertThat(this.rows.zones()).isEmpty();
		CurrentPerson.runAs(id, () -> Purpose.OPERATION.run(() -> {
			assertThat(this.rows.behind(today, List.of(), 10)).isEmpty();
			assertThat(this.rows.zones()).isEmpty();
		}));
		Purpose.SIGN_IN.run(() -> assertThat(this.rows.behind(today, List.of(), 10)).isEmpty());
	}

	/** Many people who were never decided, and nobody reads them. */
	@Test
	void looksIntoTheIndexOnly() {
		UUID[] others = Stream.generate(UUID::randomUUID).limit(5000).toArray(UUID[]::new);
		SingleConnectionDataSource connection = new SingleConnectionDataSource(this.details.getJdbcUrl(),
				Objects.requireNonNull(this.details.getUsername()), Objects.requireNonNull(this.details.getPassword()),
				true);
		JdbcTemplate owner = new JdbcTemplate(connection);
		try {
			owner.update("""
					insert into person (id, name, zone_id, since_day, created_at)
					select id, 'Other', 'Z', date '2020-01-01', now() from unnest(?) as o (id)""", (Object) others);
			owner.update("insert into athlete_status (athlete_id) select unnest(?)", (Object) others);
			owner.execute("analyze athlete_status");
			owner.execute("set plan_cache_mode = force_generic_plan");
			owner.execute("prepare behind (text[], date[], uuid[], integer) as "
					+ body(owner, "fallow_behind").replaceAll("\\bzones\\b", "\\$1")
						.replaceAll("\\bdays\\b", "\\$2")
						.replaceAll("\\bwithout\\b", "\\$3")
						.replaceAll("\\bmost\\b", "\\$4"));
			assertThat(plan(owner, "execute behind (array['Z'], array[date '2001-03-11'], '{}', 500)"))
				.contains("athlete_status_behind")
				.doesNotContain("Seq Scan on athlete_status");
			assertThat(plan(owner, body(owner, "fallow_zones"))).contains("athlete_status_behind")
				.doesNotContain("Seq Scan on athlete_status");
		}
		finally {
			owner.update("delete from athlete_status where athlete_id = any (?)", (Object) others);
			owner.update("delete from person where id = any (?)", (Object) others);
			connection.destroy();
		}
	}

	private static String body(JdbcTemplate owner, String function) {
		return Objects.requireNonNull(owner.queryForObject(
				"select prosrc from pg_proc where proname = ? and pronamespace = 'public'::regnamespace", String.class,
				function));
	}

	private static String plan(JdbcTemplate owner, String statement) {
		return String.join("\n", owner.queryForList("explain " + statement, String.class));
	}

	private PersonId athlete(ZoneId zone) {
		PersonId id = Purpose.OPERATION.call(() -> {
			Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", zone);
			return this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id();
		});
		enter(id, LocalDate.ofInstant(this.clock.instant(), zone));
		return id;
	}

	private void enter(PersonId id, LocalDate day) {
		CurrentPerson.runAs(id,
				() -> this.mornings.save(id, NewMorning.measured(day, Method.STRAP, Posture.LYING, 50.0, null),
						Submission.page(id, Role.ATHLETE, Ids.next())));
	}

	private List<LocalDate> decided(PersonId id) {
		return CurrentPerson.callAs(id, () -> this.assessments.of(id, FIRST.minusDays(9), FIRST.plusDays(9)))
			.stream()
			.map(AssessedDay::day)
			.toList();
	}

}
