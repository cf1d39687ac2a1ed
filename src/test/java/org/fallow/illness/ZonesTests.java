package org.fallow.illness;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Clearance;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;

/** Civil days in the athlete's zone: clock changes, and a move across the date line. */
@DatabaseTest
@Import(SettableClock.class)
class ZonesTests {

	private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

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
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager manager;

	private PersonId athlete(ZoneId zone) {
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", zone);
		return this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id();
	}

	private Saved save(PersonId id, NewMorning morning) {
		return this.mornings.save(id, morning, Submission.page(id, Role.ATHLETE, Ids.next()));
	}

	private static NewMorning well(LocalDate day) {
		return NewMorning.measured(day, Method.STRAP, Posture.LYING, 50.0, null);
	}

	private LocalDate recordedOn(PersonId id, LocalDate day) {
		Recorded recorded = this.mornings.latest(id, day).orElseThrow().entry().recorded();
		return recorded.on();
	}

	/** 2026-03-29 has 23 hours, 2026-10-25 has 25. */
	@Test
	void countsTheDaysOfAClockChangeAsDays() {
		LocalDate spring = LocalDate.of(2026, 3, 29);
		this.clock.set(spring.minusDays(1), LocalTime.of(23, 30), BERLIN);
		PersonId id = athlete(BERLIN);
		assertThat(save(id, well(spring))).isInstanceOf(Saved.Refused.class);
		for (LocalDate change : List.of(spring, LocalDate.of(2026, 10, 25))) {
			this.clock.set(change, LocalTime.of(0, 30), BERLIN);
			assertThat(save(id, well(change))).isInstanceOf(Saved.Stored.class);
			this.clock.set(change, LocalTime.of(23, 45), BERLIN);
			assertThat(save(id, well(change.plusDays(1)))).as("still tomorrow").isInstanceOf(Saved.Refused.class);
			assertThat(save(id, well(change).basedOn(1))).isInstanceOf(Saved.Stored.class);
			assertThat(recordedOn(id, change)).isEqualTo(change);
			this.clock.set(change.plusDays(1), LocalTime.of(0, 15), BERLIN);
			assertThat(save(id, well(change.plusDays(1)))).isInstanceOf(Saved.Stored.class);
		}
		assertThat(this.assessments.of(id, spring, LocalDate.of(2026, 10, 26))).hasSize(212)
			.last()
			.extracting(AssessedDay::clearance)
			.as("the silent months are asked about")
			.isEqualTo(Clearance.EASY_ONLY);
	}

	/**
	 * The athlete has had the morning of the 11th in Tonga (UTC+13) when it is still the
	 * 10th in Hawaii (UTC-10), where chest pain is entered for the 10th.
	 */
	@Test
	void keepsAHoldOverAMoveFromTongaToHawaii() {
		LocalDate tenth = LocalDate.of(2026, 3, 10);
		LocalDate eleventh = tenth.plusDays(1);
		this.clock.set(tenth, LocalTime.of(7, 0), TONGA);
		PersonId id = athlete(TONGA);
		save(id, well(tenth));
		this.clock.set(eleventh, LocalTime.of(7, 0), TONGA);
		save(id, well(eleventh));
		move(id, HAWAII);
		this.clock.set(tenth, LocalTime.of(12, 0), HAWAII);
		assertThat(save(id, well(eleventh.plusDays(1)))).isInstanceOf(Saved.Refused.class);
		Saved pain = save(id, well(tenth).with(ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.MODERATE)).basedOn(1));
		assertThat(pain).isInstanceOf(Saved.Stored.class);
		assertThat(clearances(id, tenth, eleventh)).containsExactly(Clearance.REFER, Clearance.REFER);
		this.clock.set(eleventh, LocalTime.of(9, 0), HAWAII);
		As.person(id);
		this.assessments.bringUpTo(List.of(id), eleventh);
		assertThat(clearances(id, tenth, eleventh)).containsExactly(Clearance.REFER, Clearance.REFER);
		this.clock.set(eleventh.plusDays(1), LocalTime.of(9, 0), HAWAII);
		As.person(id);
		this.assessments.bringUpTo(List.of(id), eleventh.plusDays(1));
		assertThat(clearances(id, eleventh.plusDays(1), eleventh.plusDays(1))).containsExactly(Clearance.REFER);
	}

	@Test
	void missesADayOnAMoveFromHawaiiToTonga() {
		LocalDate tenth = LocalDate.of(2026, 3, 10);
		this.clock.set(tenth, LocalTime.of(20, 0), HAWAII);
		PersonId id = athlete(HAWAII);
		save(id, well(tenth).with(ReportedSymptom.of(Symptom.FATIGUE, Severity.MODERATE)));
		move(id, TONGA);
		assertThat(save(id, well(tenth.plusDays(1)))).as("it is the 11th at once").isInstanceOf(Saved.Stored.class);
		assertThat(clearances(id, tenth, tenth.plusDays(1))).containsExactly(Clearance.REST, Clearance.REST);
		assertThat(recordedOn(id, tenth.plusDays(1))).isEqualTo(tenth.plusDays(1));
	}

	private List<Clearance> clearances(PersonId id, LocalDate from, LocalDate to) {
		return this.assessments.of(id, from, to).stream().map(AssessedDay::clearance).toList();
	}

	private void move(PersonId id, ZoneId zone) {
		CurrentPerson.runAs(id,
				() -> new TransactionTemplate(this.manager)
					.executeWithoutResult((status) -> this.jdbc.sql("update person set zone_id = ? where id = ?")
						.params(zone.getId(), id.value())
						.update()));
	}

}
