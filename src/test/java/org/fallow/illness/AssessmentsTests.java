package org.fallow.illness;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.NewSession;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Sessions;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.entry.TimelineChanged;
import org.fallow.illness.core.ReportKind;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.team.Athlete;
import org.fallow.team.Club;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

@DatabaseTest
@Import(SettableClock.class)
class AssessmentsTests {

	private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Sessions sessions;

	@Autowired
	private IllnessFacts illness;

	@Autowired
	private ClearanceFacts clearances;

	@Autowired
	private CeilingFacts ceilings;

	@Autowired
	private Assessments assessments;

	@Autowired
	private Replays replays;

	@Autowired
	private JdbcClient jdbc;

	private TransactionTemplate transactions;

	private Athlete athlete;

	private PersonId coach;

	@BeforeEach
	void addAnAthlete(@Autowired PlatformTransactionManager manager) {
		this.transactions = new TransactionTemplate(manager);
		this.clock.set(FIRST);
		Club club = this.people.foundClub("Club " + UUID.randomUUID());
		Team team = this.people.addTeam(club.id(), "Team", ZoneOffset.UTC);
		this.athlete = this.people.addAthlete(team.id(), NewAthlete.named("Ann"));
		this.coach = this.people.addCoach(team.id(), "Cay");
		As.person(this.coach);
	}

	@Test
	void clearsAWellMorningAtOnce() {
		enter(0, 50);
		AssessedDay day = status().latest();
		assertThat(day).isNotNull();
		assertThat(day.clearance()).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(day.rhrBpm()).isEqualTo(50);
		assertThat(status().lastEntry()).isEqualTo(FIRST);
	}

	@Test
	void restsOnTwelveBeatsAboveTheBaseline() {
		for (int day = 0; day < 20; day++) {
			enter(day, 50 + day % 3);
		}
		enter(20, 63);
		assertThat(latestClearance()).isEqualTo(Clearance.REST);
	}

	@Test
	void refersUntilAClinicianClears() {
		enter(0, 50);
		this.mornings.save(id(), morning(0, 50).with(felt(Symptom.CHEST_PAIN)).basedOn(1), byAthlete());
		assertThat(latestClearance()).isEqualTo(Clearance.REFER);
		this.mornings.save(id(), morning(0, 50).basedOn(2), byAthlete());
		assertThat(latestClearance()).isEqualTo(Clearance.REFER);
		this.clock.set(FIRST.plusDays(1));
		Saved saved = this.clearances.clear(id(),
				new NewClearance(FIRST.plusDays(1), null, Clearance.FULL_TRAINING, "Dr Hill", "GP", null), byCoach());
		assertThat(saved).isInstanceOf(Saved.Stored.class);
		assertThat(latestClearance()).isNotEqualTo(Clearance.REFER);
	}

	@Test
	void refusesABackDatedClearance() {
		NewClearance clearance = new NewClearance(FIRST.minusDays(1), null, Clearance.REST, "Dr Hill", "GP", null);
		assertThat(codes(this.clearances.clear(id(), clearance, byCoach()))).containsExactly("clearance.back-dated");
	}

	@Test
	void refusesAWithdrawalThatTheFoldWouldPassOver() {
		assertThat(codes(this.illness.withdraw(id(), "none", byCoach()))).containsExactly("withdraw.no-episode");
		this.illness.report(id(), new NewReport(FIRST, ReportKind.FEVER, 5, null, null), byAthlete());
		assertThat(codes(this.illness.withdraw(id(), "none", byCoach()))).containsExactly("withdraw.fever");
		this.clock.set(FIRST.plusDays(1));
		assertThat(codes(this.illness.withdraw(id(), "none", byCoach()))).containsExactly("withdraw.fever");
		this.illness.hold(id(), FIRST, "looked grey", byCoach());
		assertThat(codes(this.illness.withdraw(id(), "none", byCoach()))).containsExactly("withdraw.hold");
	}

	@Test
	void refusesAWorkingLevelWithTheReasonsAndTakesOneThatHolds() {
		NewWorkingLevel level = new NewWorkingLevel("Dr Hill", "GP", "no concern", "well for weeks");
		assertThat(codes(this.illness.workingLevel(id(), level, byCoach()))).containsExactly("level.no-episode");
		UUID team = this.athlete.teamId();
		this.athlete = this.people.addAthlete(team, new NewAthlete("Bea", null, null, FIRST.minusYears(30), null));
		for (int day = 0; day < 20; day++) {
			enter(day, 50);
		}
		this.clock.set(FIRST.plusDays(20));
		this.mornings.save(id(), morning(20, 50).with(felt(Symptom.FATIGUE)), byAthlete());
		for (int day = 21; day < 43; day++) {
			enter(day, 57);
			if (day == 40) {
				assertThat(codes(this.illness.workingLevel(id(), level, byCoach()))).containsExactly("level.too-few");
			}
		}
		NewWorkingLevel silent = new NewWorkingLevel("", "GP", " ", "well for weeks");
		assertThat(codes(this.illness.workingLevel(id(), silent, byCoach()))).containsExactly("entry.words.missing",
				"entry.words.missing");
		assertThat(this.illness.workingLevel(id(), level, byCoach())).isInstanceOf(Saved.Stored.class);
		assertThat(codes(this.illness.workingLevel(id(), level, byCoach()))).containsExactly("level.in-force");
		enter(43, 57);
		assertThat(status().latest().rhrDeviation()).isZero();
		assertThat(this.assessments.decisions(id())).extracting((d) -> d.decision().kind().name())
			.contains("WORKING_LEVEL");
		assertThat(this.illness.of(id())).extracting((stored) -> stored.event().toString())
			.anyMatch((text) -> text.contains("no concern"));
	}

	@Test
	void goesBySymptomsAloneOnlyAfterAChangeOfMethod() {
		for (int day = 0; day < 20; day++) {
			enter(day, 50);
		}
		this.clock.set(FIRST.plusDays(20));
		this.mornings.save(id(), morning(20, 50).with(felt(Symptom.FATIGUE)), byAthlete());
		assertThat(codes(this.illness.symptomsOnly(id(), "slow", byCoach()))).containsExactly("symptoms-only.not-now");
		this.clock.set(FIRST.plusDays(21));
		this.mornings.save(id(), NewMorning.measured(FIRST.plusDays(21), Method.COUNT_60, Posture.LYING, 52.0, null),
				byAthlete());
		assertThat(this.illness.symptomsOnly(id(), "the strap broke", byCoach())).isInstanceOf(Saved.Stored.class);
	}

	@Test
	void withdrawsAnEpisodeThatWasNone() {
		this.illness.report(id(), new NewReport(FIRST, ReportKind.OTHER, 1, null, null), byAthlete());
		assertThat(status().latest()).matches(AssessedDay::inEpisode);
		this.clock.set(FIRST.plusDays(1));
		assertThat(this.illness.withdraw(id(), "wrong athlete", byCoach())).isInstanceOf(Saved.Stored.class);
		assertThat(status().latest()).matches((day) -> !day.inEpisode());
		assertThat(this.assessments.decisions(id())).extracting((d) -> d.decision().kind().name())
			.containsExactly("WITHDRAWN", "OPENED");
	}

	@Test
	void keepsNoEntryThatCannotBeAssessed() {
		enter(0, 50);
		this.clock.set(FIRST.plusDays(1));
		this.transactions.executeWithoutResult((status) -> {
			this.jdbc.sql("update assessment set state = '{\"version\":99}' where athlete_id = ?")
				.param(id().value())
				.update();
		});
		assertThatThrownBy(() -> this.mornings.save(id(), morning(1, 50), byAthlete()))
			.isInstanceOf(RuntimeException.class);
		assertThat(this.mornings.latest(id(), FIRST.plusDays(1))).isEmpty();
	}

	@Test
	void livesDayByDayAsAReplayDoes() {
		live();
		LocalDate last = FIRST.plusDays(45);
		List<String> lived = rows();
		List<String> evidence = evidence();
		this.transactions.executeWithoutResult((status) -> {
			this.jdbc.sql("update assessment set state = null, reasons = 'x' where athlete_id = ?")
				.param(id().value())
				.update();
			this.jdbc.sql("delete from stage_decision where athlete_id = ?").param(id().value()).update();
			this.assessments.assess(new TimelineChanged(this.athlete, FIRST));
		});
		assertThat(rows()).isEqualTo(lived).hasSize(46);
		assertThat(evidence()).isEqualTo(evidence).isNotEmpty();
		assertThat(this.replays.replay(this.athlete, last, last, List.of())).isNotEmpty();
	}

	@Test
	void computesAnyPastDayAgain() {
		live();
		for (AssessedDay stored : this.assessments.of(id(), FIRST, FIRST.plusDays(45))) {
			assertThat(this.assessments.day(id(), stored.day())).hasValueSatisfying((day) -> {
				assertThat(day.clearance()).isEqualTo(stored.clearance());
				assertThat(MessagesJson.write(day.reasons())).isEqualTo(MessagesJson.write(stored.reasons()));
			});
		}
	}

	@Test
	void decidesSilentDaysUpToTheAthletesToday() {
		enter(0, 50);
		this.clock.set(FIRST.plusDays(3));
		this.assessments.bringUpTo(List.of(id()), FIRST.plusDays(30));
		assertThat(this.assessments.of(id(), FIRST, FIRST.plusDays(30))).extracting(AssessedDay::day)
			.containsExactly(FIRST, FIRST.plusDays(1), FIRST.plusDays(2), FIRST.plusDays(3));
		assertThat(latestClearance()).isEqualTo(Clearance.NOT_ASSESSED);
	}

	private void live() {
		for (int day = 0; day < 46; day++) {
			this.clock.set(FIRST.plusDays(day));
			if (day == 20 || day == 21) {
				this.mornings.save(id(), morning(day, 58).with(felt(Symptom.FATIGUE)), byAthlete());
			}
			else if (day % 9 != 5) {
				this.mornings.save(id(), morning(day, 50 + day % 3), byAthlete());
			}
			if (day % 9 == 6) {
				this.mornings.save(id(), morning(day - 1, 51), byAthlete());
			}
			if (day > 22 && day % 2 == 0) {
				this.sessions.save(id(), NewSession.run(FIRST.plusDays(day), 30, 2.0, Intensity.EASY), byAthlete());
			}
			this.assessments.bringUpTo(List.of(id()), FIRST.plusDays(day));
		}
	}

	private List<String> rows() {
		return this.transactions.execute((status) -> this.jdbc
			.sql("select (a.*)::text from (select athlete_id, day, rule_hash, clearance, reasons, notices, "
					+ "holding, stage, day_in_stage, path, mark, rhr_bpm, rhr_n, rhr_baseline, rhr_spread, rhr_dev, "
					+ "rhr_flag, rhr_line, above_line, next_gate, next_gate_earliest from assessment "
					+ "where athlete_id = ? order by day) a")
			.param(id().value())
			.query(String.class)
			.list());
	}

	private List<String> evidence() {
		return new ArrayList<>(this.assessments.decisions(id()).stream().map(StageDecision::evidence).toList());
	}

	private void enter(int day, double bpm) {
		this.clock.set(FIRST.plusDays(day));
		assertThat(this.mornings.save(id(), morning(day, bpm), byAthlete())).isInstanceOf(Saved.Stored.class);
	}

	private AthleteStatus status() {
		return this.assessments.status(List.of(id())).get(id());
	}

	private Clearance latestClearance() {
		AssessedDay latest = status().latest();
		assertThat(latest).isNotNull();
		return latest.clearance();
	}

	private static List<String> codes(Saved saved) {
		return ((Saved.Refused) saved).problems().stream().map((problem) -> problem.message().code()).toList();
	}

	private static ReportedSymptom felt(Symptom symptom) {
		return ReportedSymptom.of(symptom, Severity.MODERATE);
	}

	private static NewMorning morning(int day, double bpm) {
		return NewMorning.measured(FIRST.plusDays(day), Method.STRAP, Posture.LYING, bpm, null);
	}

	private PersonId id() {
		return this.athlete.id();
	}

	private Submission byAthlete() {
		return Submission.page(id(), Role.ATHLETE, Ids.next());
	}

	private Submission byCoach() {
		return Submission.page(this.coach, Role.COACH, Ids.next());
	}

}
