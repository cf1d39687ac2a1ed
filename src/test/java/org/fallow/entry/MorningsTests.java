package org.fallow.entry;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.Athlete;
import org.fallow.team.Club;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.fallow.wording.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

@DatabaseTest
@Import(SettableClock.class)
class MorningsTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Mornings mornings;

	@Autowired
	private JdbcClient jdbc;

	private Athlete athlete;

	@BeforeEach
	void addAnAthlete() {
		this.clock.set(TODAY);
		Club club = this.people.foundClub("Club " + UUID.randomUUID());
		Team team = this.people.addTeam(club.id(), "Team", ZoneOffset.UTC);
		this.athlete = this.people.addAthlete(team.id(), NewAthlete.named("Ann"));
	}

	@Test
	void storesTheSameSendingOnce() {
		Submission submission = byAthlete();
		Saved first = this.mornings.save(id(), measured(52), submission);
		Saved second = this.mornings.save(id(), measured(52), submission);
		assertThat(first).isEqualTo(new Saved.Stored("2026-03-10", 1, false));
		assertThat(second).isEqualTo(new Saved.Stored("2026-03-10", 1, true));
		assertThat(this.mornings.of(id(), TODAY, TODAY)).hasSize(1);
	}

	@Test
	void tellsTheSecondTabThatTheMorningChanged() {
		this.mornings.save(id(), measured(52), byAthlete());
		Saved other = this.mornings.save(id(), measured(57), byAthlete());
		assertThat(other).isEqualTo(new Saved.AlreadyChanged(1));
		Saved again = this.mornings.save(id(), measured(57).basedOn(1), byAthlete());
		assertThat(again).isEqualTo(new Saved.Stored("2026-03-10", 2, false));
		assertThat(this.mornings.of(id(), TODAY, TODAY)).extracting((stored) -> stored.entry().rhrBpm())
			.containsExactly(52.0, 57.0);
	}

	@Test
	void bringsBackEveryValue() {
		NewMorning full = new NewMorning(TODAY, 0, Method.STRAP, Posture.LYING, 52.5, 61.125, List.of(1000, 1010), true,
				38.4,
				List.of(ReportedSymptom.of(Symptom.COUGH, Severity.MODERATE),
						new ReportedSymptom(Symptom.OTHER, Severity.MILD, "itchy ear")),
				true, FeverMedicine.OTHER, false, Feels.UNWELL, Severity.MILD,
				List.of(ContextTag.HEAT, ContextTag.TRAVEL), "rough night", null);
		this.mornings.save(id(), full, byAthlete());
		StoredMorning stored = this.mornings.latest(id(), TODAY).orElseThrow();
		assertThat(stored.entry()).isEqualTo(full.entry(stored.entry().recorded()));
		assertThat(stored.rrMs()).containsExactly(1000, 1010);
	}

	@ParameterizedTest
	@CsvSource({ "0,entry.rhr.range", "19,entry.rhr.range", "221,entry.rhr.range" })
	void refusesAnImpossibleHeartRate(double bpm, String code) {
		assertThat(problems(measured(bpm))).extracting((p) -> p.message().code()).containsExactly(code);
		assertThat(this.mornings.latest(id(), TODAY)).isEmpty();
	}

	@Test
	void refusesTomorrow() {
		NewMorning tomorrow = NewMorning.feeling(TODAY.plusDays(1));
		assertThat(problems(tomorrow)).extracting((p) -> p.message().code()).containsExactly("entry.day.future");
	}

	@Test
	void refusesANegativeRmssd() {
		NewMorning morning = NewMorning.measured(TODAY, Method.STRAP, Posture.LYING, null, -1.0);
		assertThat(problems(morning)).extracting((p) -> p.message().code()).containsExactly("entry.rmssd.range");
	}

	@Test
	void takesAFileInOnce() {
		List<NewMorning> file = List.of(measured(52), measured(TODAY.minusDays(3), 50));
		List<Saved> first = this.mornings.takeIn(id(), file, id());
		List<Saved> second = this.mornings.takeIn(id(), file, id());
		assertThat(first).allMatch((saved) -> saved instanceof Saved.Stored stored && !stored.again());
		assertThat(second).allMatch((saved) -> saved instanceof Saved.Stored stored && stored.again());
	}

	@Test
	void neverReplacesAMorningEnteredByHand() {
		this.mornings.save(id(), measured(52), byAthlete());
		assertThat(this.mornings.takeIn(id(), List.of(measured(60)), id()))
			.containsExactly(new Saved.AlreadyChanged(1));
	}

	@Test
	void countsHistoryAsKnownOnItsDay() {
		LocalDate past = TODAY.minusDays(30);
		this.mornings.takeIn(id(), List.of(measured(past, 50)), id());
		assertThat(this.mornings.latest(id(), past).orElseThrow().entry().recorded().on()).isEqualTo(past);
	}

	@Test
	void countsALaterImportAsKnownWhenItCame() {
		this.clock.set(TODAY.plusDays(1));
		LocalDate past = TODAY.minusDays(30);
		this.mornings.takeIn(id(), List.of(measured(past, 50)), id());
		assertThat(this.mornings.latest(id(), past).orElseThrow().entry().recorded().on()).isEqualTo(TODAY.plusDays(1));
	}

	@ParameterizedTest
	@CsvSource({ "update morning_entry set note = 'x'", "delete from morning_entry",
			"update illness_event set words = 'x'", "delete from illness_event",
			"update session_log set removed = true", "delete from absence", "delete from morning_symptom",
			"delete from access_trace", "update rule_set set canonical = 'x'" })
	void mayOnlyAddFacts(String statement) {
		assertThatExceptionOfType(DataAccessException.class).isThrownBy(() -> this.jdbc.sql(statement).update())
			.havingRootCause()
			.withMessageContaining("permission denied");
	}

	private List<Problem> problems(NewMorning morning) {
		Saved saved = this.mornings.save(id(), morning, byAthlete());
		return ((Saved.Refused) saved).problems();
	}

	private PersonId id() {
		return this.athlete.id();
	}

	private Submission byAthlete() {
		return Submission.page(id(), Role.ATHLETE, Ids.next());
	}

	private static NewMorning measured(double bpm) {
		return measured(TODAY, bpm);
	}

	private static NewMorning measured(LocalDate day, double bpm) {
		return NewMorning.measured(day, Method.STRAP, Posture.LYING, bpm, null);
	}

}
