package org.fallow.team;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.NewSession;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Sessions;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.rules.Intensity;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * The database alone, without any check of the application: plain SQL as the
 * application's role, which is what a forgotten check would run.
 */
@DatabaseTest
@NobodyOperates
class AthleteWallsTests {

	/** Tables with a person's id that no policy guards, and why. */
	private static final Set<String> OPEN = Set.of();

	@Autowired
	private People people;

	@Autowired
	private Consents consents;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Sessions sessions;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	private Team team;

	private PersonId ann;

	private PersonId ben;

	private PersonId coach;

	private PersonId stranger;

	@BeforeEach
	void enterAMorning() {
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		this.ann = this.people.addAthlete(this.team.id(), NewAthlete.named("Ann")).id();
		this.ben = this.people.addAthlete(this.team.id(), NewAthlete.named("Ben")).id();
		this.coach = this.people.addCoach(this.team.id(), "Cay");
		this.stranger = this.people.addCoach(this.people.addTeam(club, "Other", ZoneOffset.UTC).id(), "Sam");
		LocalDate today = LocalDate.now(ZoneOffset.UTC);
		this.mornings.save(this.ann,
				NewMorning.measured(today, Method.STRAP, Posture.LYING, 50.0, null)
					.with(ReportedSymptom.of(Symptom.FATIGUE, Severity.MODERATE)),
				Submission.page(this.ann, Role.ATHLETE, UUID.randomUUID()));
		this.sessions.save(this.ann, NewSession.run(today, 30, 2.0, Intensity.EASY),
				Submission.page(this.ann, Role.ATHLETE, UUID.randomUUID()));
	}

	@ParameterizedTest
	@ValueSource(strings = { "morning_entry", "morning_symptom", "session_log", "assessment", "athlete_status",
			"stage_decision" })
	void showsTheAthleteAndTheirCoachesOnly(String table) {
		assertThat(rows(this.ann, table)).isPositive();
		assertThat(rows(this.coach, table)).isPositive();
		assertThat(rows(this.ben, table)).isZero();
		assertThat(rows(this.stranger, table)).isZero();
		assertThat(count("select count(*) from " + table + " where athlete_id = ?", this.ann.value())).isZero();
		CurrentPerson.runAs(this.ann, () -> this.consents.withdraw(this.ann));
		assertThat(rows(this.coach, table)).isZero();
		assertThat(rows(this.ann, table)).isPositive();
	}

	@Test
	void showsTheTraceToTheAthleteAlone() {
		assertThat(rows(this.ann, "access_trace")).isEqualTo(2);
		assertThat(rows(this.coach, "access_trace")).isZero();
		assertThat(rows(this.ben, "access_trace")).isZero();
	}

	@Test
	void showsNoNamesToStrangers() {
		String sql = "select count(*) from person where id = ?";
		assertThat(as(this.coach, () -> count(sql, this.ann.value()))).isOne();
		assertThat(as(this.stranger, () -> count(sql, this.ann.value()))).isZero();
		assertThat(as(this.ben, () -> count(sql, this.ann.value()))).isZero();
		assertThat(as(this.ann, () -> count(sql, this.coach.value()))).isOne();
	}

	@ParameterizedTest
	@ValueSource(strings = {
			"insert into absence (athlete_id, key, revision, day, kind, zone_id, recorded_at, recorded_on, written_at, "
					+ "actor_id, role, source, request_id) values (:ann, 'k', 1, current_date, 'OTHER', 'Z', now(), "
					+ "current_date, now(), :me, 'COACH', 'PAGE', gen_random_uuid())",
			"insert into membership (person_id, team_id, shares, joined_at) values (:me, :team, true, now())",
			"insert into post (id, person_id, club_id, team_id, kind, whole_team, begun_at) select gen_random_uuid(), "
					+ ":me, club_id, id, 'HEAD_COACH', true, now() from team where id = :team",
			"insert into consent (athlete_id, id, team_id, kind, at, actor_id, words_version) values (:ann, "
					+ "gen_random_uuid(), :team, 'GIVEN', now(), :me, 'x')",
			"insert into consent (athlete_id, id, team_id, kind, at, actor_id, words_version, basis) values (:ann, "
					+ "gen_random_uuid(), :team, 'KEPT', now(), :me, 'x', 'OWN_WORD')" })
	void letsNobodyIn(String sql) {
		for (PersonId person : List.of(this.ben, this.stranger)) {
			if (person.equals(this.ben) && sql.contains("into membership")) {
				continue;
			}
			assertThatThrownBy(() -> as(person, () -> update(sql, person))).isInstanceOf(DataAccessException.class)
				.hasStackTraceContaining("row-level security");
		}
	}

	@Test
	void letsNoCoachTurnSharingOnAgain() {
		CurrentPerson.runAs(this.ann, () -> this.consents.withdraw(this.ann));
		assertThat(
				as(this.coach, () -> update("update membership set shares = true where person_id = :ann", this.coach)))
			.isZero();
	}

	/** Nor states in anybody's name that they agreed. */
	@ParameterizedTest
	@ValueSource(strings = { "'GIVEN', now(), :me, 'x', null", "'GIVEN', now(), :ann, 'x', null",
			"'STATED', now(), :me, 'x', null", "'WITHDRAWN', now(), :me, 'x', null",
			"'KEPT', now(), :ann, 'x', 'CLUB_RECORD'" })
	void letsNoCoachWriteConsent(String values) {
		assertThatThrownBy(
				() -> as(this.coach,
						() -> update("insert into consent (athlete_id, id, team_id, kind, at, actor_id, "
								+ "words_version, basis) values (:ann, gen_random_uuid(), :team, " + values + ")",
								this.coach)))
			.hasStackTraceContaining("row-level security");
	}

	/** Who left is nobody any more, and the coach is told only what was asked. */
	@Test
	void hidesWhoLeftFromTheCoach() {
		CurrentPerson.runAs(this.ann, () -> this.consents.leave(this.ann));
		assertThat(as(this.coach, () -> count("select count(*) from person where id = ?", this.ann.value()))).isZero();
		String closed = "select count(*) from fallow_closed_names('" + this.team.id() + "', array[?, 'Ben'])";
		assertThat(as(this.coach, () -> count(closed, "ANN\u200b"))).isOne();
		assertThat(as(this.coach, () -> count(closed, "An"))).isZero();
		for (PersonId other : List.of(this.stranger, this.ben, this.ann)) {
			assertThat(as(other, () -> count(closed, "Ann"))).isZero();
		}
	}

	@Test
	void forgesNobodyElsesHand() {
		assertThatThrownBy(() -> as(this.coach,
				() -> update("insert into absence (athlete_id, key, revision, day, kind, zone_id, recorded_at, "
						+ "recorded_on, written_at, actor_id, role, source, request_id) values (:ann, 'k', 1, "
						+ "current_date, 'OTHER', 'Z', now(), current_date, now(), :ann, 'ATHLETE', 'PAGE', "
						+ "gen_random_uuid())", this.coach)))
			.hasStackTraceContaining("row-level security");
	}

	/** A new table with an athlete or person in it and no policy fails here. */
	@Test
	void guardsEveryTableWithAPerson() {
		List<String> open = this.jdbc.sql("""
				select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace
				where n.nspname = 'public' and c.relkind in ('r', 'p')
					and exists (select 1 from pg_attribute a where a.attrelid = c.oid and not a.attisdropped
						and a.attname in ('athlete_id', 'person_id'))
					and (not c.relrowsecurity or not exists (select 1 from pg_policy p where p.polrelid = c.oid))
				order by c.relname""").query(String.class).list();
		assertThat(open).containsExactlyElementsOf(OPEN);
	}

	@Test
	void worksAsARoleThatNoPolicyForgets() {
		assertThat(this.jdbc
			.sql("select rolsuper or rolbypassrls or exists (select 1 from pg_class c where c.relowner = r.oid) "
					+ "from pg_roles r where rolname = current_user")
			.query(Boolean.class)
			.single()).isFalse();
	}

	private int rows(PersonId person, String table) {
		return as(person, () -> count("select count(*) from " + table + " where athlete_id = ?", this.ann.value()));
	}

	private int count(String sql, Object value) {
		Integer count = new TransactionTemplate(this.transactions)
			.execute((status) -> this.jdbc.sql(sql).param(value).query(Integer.class).single());
		return (count == null) ? -1 : count;
	}

	private int update(String sql, PersonId me) {
		Integer changed = new TransactionTemplate(this.transactions).execute((status) -> this.jdbc.sql(sql)
			.param("ann", this.ann.value())
			.param("me", me.value())
			.param("team", this.team.id())
			.update());
		return (changed == null) ? -1 : changed;
	}

	private static <T> T as(PersonId person, Supplier<T> work) {
		return CurrentPerson.callAs(person, work);
	}

}
