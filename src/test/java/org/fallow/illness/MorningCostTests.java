package org.fallow.illness;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.AbsenceKind;
import org.fallow.entry.Absences;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewAbsence;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.platform.Statements;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * How many statements one morning takes, whatever else the athlete has noted.
 */
@DatabaseTest
@Import({ SettableClock.class, Statements.class })
class MorningCostTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	private static final int MOST = 6;

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Absences absences;

	@Autowired
	private Assessments assessments;

	private PersonId athlete;

	@BeforeEach
	void addAnAthleteWithHistory() {
		this.clock.set(TODAY.minusDays(1));
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.athlete = this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id();
		List<NewMorning> history = new ArrayList<>();
		for (int back = 40; back > 0; back--) {
			history.add(measured(TODAY.minusDays(back), 50 + back % 3));
		}
		this.mornings.takeIn(this.athlete, history, this.athlete);
		this.absences.save(this.athlete,
				new NewAbsence(null, TODAY.minusDays(20), TODAY.minusDays(18), AbsenceKind.HOLIDAY, null, null),
				submission());
		this.clock.set(TODAY);
	}

	@Test
	void anOrdinaryMorning() {
		expectFew(measured(TODAY, 51), 1);
		assertThat(this.assessments.day(this.athlete, TODAY).orElseThrow().rhr().reading()).isEqualTo(51);
	}

	@Test
	void aMorningWithSymptomsThatOpensAnEpisode() {
		expectFew(ill(0), 1);
		assertThat(this.assessments.decisions(this.athlete)).hasSize(1);
		assertThat(this.mornings.latest(this.athlete, TODAY).orElseThrow().entry().symptoms()).hasSize(2);
	}

	@Test
	void aCorrectionOfAMorningThatOpenedAnEpisode() {
		expectFew(ill(0), 1);
		expectFew(ill(1), 2);
		assertThat(this.assessments.decisions(this.athlete)).hasSize(1);
	}

	/** Or a morning could be read whose symptoms were stored a moment too late. */
	@Test
	void symptomsAreReadAfterTheirMornings() {
		List<String> statements = CurrentPerson.callAs(this.athlete,
				() -> Statements.of(() -> this.assessments.day(this.athlete, TODAY)));
		assertThat(statements).filteredOn((sql) -> sql.contains("from morning_"))
			.satisfiesExactly((sql) -> assertThat(sql).contains("from morning_entry").doesNotContain("morning_symptom"),
					(sql) -> assertThat(sql).contains("from morning_symptom").doesNotContain("morning_entry"));
	}

	private void expectFew(NewMorning morning, int revision) {
		Submission submission = submission();
		Saved[] saved = new Saved[1];
		List<String> statements = CurrentPerson.callAs(this.athlete,
				() -> Statements.of(() -> saved[0] = this.mornings.save(this.athlete, morning, submission)));
		assertThat(saved[0]).isEqualTo(new Saved.Stored(TODAY.toString(), revision, false));
		assertThat(statements).as("statements of one morning").isNotEmpty().hasSizeLessThanOrEqualTo(MOST);
	}

	private static NewMorning ill(int basedOn) {
		return measured(TODAY, 58)
			.with(ReportedSymptom.of(Symptom.COUGH, Severity.MODERATE),
					ReportedSymptom.of(Symptom.SORE_THROAT, Severity.MILD))
			.basedOn(basedOn);
	}

	private static NewMorning measured(LocalDate day, double bpm) {
		return NewMorning.measured(day, Method.STRAP, Posture.LYING, bpm, null);
	}

	private Submission submission() {
		return Submission.page(this.athlete, Role.ATHLETE, Ids.next());
	}

}
