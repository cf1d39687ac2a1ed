package org.fallow.illness;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.Submission;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.platform.Statements;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * That a morning is decided from rows found by an index, by the athlete and the day, with
 * the row policies in force: it must not become slower with the rows of other people.
 */
@DatabaseTest
@Import({ SettableClock.class, Statements.class })
class MorningPlanTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	private static final int OTHERS = 50;

	private static final int DAYS = 400;

	private static final List<String> FILLED = List.of("morning_symptom", "morning_entry", "session_log", "assessment",
			"person");

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Mornings mornings;

	@Autowired
	private JdbcTemplate jdbc;

	@Autowired
	private TransactionTemplate transaction;

	@Autowired
	private FlywayConnectionDetails details;

	private final UUID[] others = Stream.generate(UUID::randomUUID).limit(OTHERS).toArray(UUID[]::new);

	/** People of no team, whom no job looks at. */
	@BeforeEach
	void addOtherPeoplesRows() {
		owner("""
				insert into person (id, name, zone_id, since_day, created_at)
				select id, 'Other', 'Z', date '2020-01-01', now() from unnest(?) as o (id)""", (Object) this.others);
		owner("""
				insert into morning_entry (athlete_id, day, revision, rr_ms, unsure, fever_last_24h, fever_medicine,
					tags, zone_id, recorded_at, recorded_on, written_at, actor_id, role, source, request_id)
				select id, ?::date - d, 1, '{}', false, false, 'NONE', '{}', 'Z', now(), ?::date - d, now(), id,
					'ATHLETE', 'PAGE', gen_random_uuid()
				from unnest(?) as o (id), generate_series(1, ?) as d""", TODAY, TODAY, this.others, DAYS);
		owner("""
				insert into morning_symptom (athlete_id, day, revision, position, symptom, severity)
				select athlete_id, day, revision, 0, 'COUGH', 'MILD' from morning_entry where athlete_id = any (?)""",
				(Object) this.others);
		owner("""
				insert into session_log (athlete_id, key, revision, day, activity, after_session, removed, zone_id,
					recorded_at, recorded_on, written_at, actor_id, role, source, request_id)
				select id, gen_random_uuid(), 1, ?::date - d, 'RUN', '{}', false, 'Z', now(), ?::date - d, now(), id,
					'ATHLETE', 'PAGE', gen_random_uuid()
				from unnest(?) as o (id), generate_series(1, ?) as d""", TODAY, TODAY, this.others, DAYS);
		owner("""
				insert into assessment (athlete_id, day, rule_hash, clearance, reasons, notices, holding, mark, rhr_n,
					above_line, hrv_n, state)
				select id, ?::date - d, '', 'REST', '[]', '[]', false, 'NONE', 0, false, 0, '{}'
				from unnest(?) as o (id), generate_series(1, ?) as d""", TODAY, this.others, DAYS);
		FILLED.forEach((table) -> owner("analyze " + table));
	}

	@AfterEach
	void removeThem() {
		FILLED.forEach((table) -> owner(
				"delete from " + table + " where " + ("person".equals(table) ? "id" : "athlete_id") + " = any (?)",
				(Object) this.others));
	}

	@Test
	void aMorningIsDecidedFromIndexes() {
		this.clock.set(TODAY);
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		PersonId athlete = this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id();
		NewMorning morning = NewMorning.measured(TODAY, Method.STRAP, Posture.LYING, 50.0, null);
		Submission submission = Submission.page(athlete, Role.ATHLETE, Ids.next());
		String plans = CurrentPerson.callAs(athlete, () -> String.join("\n\n", Statements
			.plansOf(() -> this.mornings.save(athlete, morning, submission), this.transaction, this.jdbc)));
		assertThat(plans).contains(" on morning_entry", " on morning_symptom", " on session_log ", " on assessment ")
			.contains(" morning_entry_pkey", " session_log_day", " assessment_pkey", " assessment_state")
			.doesNotContain("Seq Scan on morning_entry", "Seq Scan on morning_symptom", "Seq Scan on session_log",
					"Seq Scan on assessment", "Seq Scan on person");
	}

	private void owner(String sql, Object... values) {
		new JdbcTemplate(new DriverManagerDataSource(this.details.getJdbcUrl(),
				Objects.requireNonNull(this.details.getUsername()), Objects.requireNonNull(this.details.getPassword())))
			.update(sql, values);
	}

}
