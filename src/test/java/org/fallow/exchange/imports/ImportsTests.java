package org.fallow.exchange.imports;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;

import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.StoredMorning;
import org.fallow.entry.Submission;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.csv.ImportField;
import org.fallow.illness.Assessments;
import org.fallow.illness.core.SharedData;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.Athlete;
import org.fallow.team.Basis;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Squad;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;

@DatabaseTest
@Import(SettableClock.class)
@SuppressWarnings("NullAway.Init")
class ImportsTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Squad squad;

	@Autowired
	private Imports imports;

	@Autowired
	private ImportWorker worker;

	@Autowired
	private ImportRun run;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Assessments assessments;

	@Autowired
	private JdbcClient jdbc;

	@TempDir
	private Path folder;

	private UUID team;

	private PersonId coach;

	@BeforeEach
	void foundATeam() {
		this.clock.set(TODAY);
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", ZoneOffset.UTC)
			.id();
		this.coach = this.people.addCoach(this.team, "Coach");
		As.person(this.coach);
	}

	@Test
	void takesGoodRowsInAndListsBadOnes() {
		UUID id = importFile("""
				person,date,rhr_bpm,note
				Ann,2026-11-24,50,"a ""quoted"" word, a \\ and {braces}"
				Ann,2026-11-25,19,
				Ann,2026-11-24,51,
				=1+1,2026-11-25,=1+1,
				Bob,2026-11-26,50,
				Bob,2026-11-25,50,=1+1
				""", true);
		ImportJob job = job(id);
		assertThat(job.state()).isEqualTo(ImportJob.State.DONE);
		assertThat(job.counts()).isEqualTo(new ImportJob.Counts(6, 6, 2, 0, 0, 4, 2, 0));
		assertThat(job.firstDay()).isEqualTo(TODAY.minusDays(1));
		assertThat(this.imports.problems(id, 0, 10))
			.extracting((p) -> p.line() + " " + p.column() + " " + p.value() + " " + p.reason().code())
			.containsExactly("3 rhr_bpm 19 entry.rhr.range", "4 date 2026-11-24 importRow.twice",
					"5 rhr_bpm =1+1 importRow.no-number", "6 date 2026-11-26 entry.day.future");
		assertThat(entries("Ann")).singleElement()
			.satisfies((one) -> assertThat(one.entry().note()).isEqualTo("a \"quoted\" word, a \\ and {braces}"));
		assertThat(entries("Bob")).singleElement().satisfies((one) -> assertThat(one.entry().note()).isEqualTo("=1+1"));
		assertThat(this.squad.athletesIn(this.team)).extracting(Athlete::name).containsExactly("Ann", "Bob");
	}

	@Test
	void changesNothingTheSecondTime() {
		String text = "person,date,rhr_bpm,rmssd_ms\nAnn,2026-11-24,50.0,61.5\nAnn,2026-11-25,51,\n";
		importFile(text, true);
		List<StoredMorning> before = entries("Ann");
		this.clock.set(TODAY.plusDays(1));
		ImportJob again = job(importFile(text, false));
		assertThat(again.counts()).isEqualTo(new ImportJob.Counts(2, 2, 0, 2, 0, 0, 0, 1));
		assertThat(entries("Ann")).isEqualTo(before);
	}

	@Test
	void correctsAnEarlierImportAndNeverWhatWasEnteredByHand() {
		importFile("person,date,rhr_bpm\nAnn,2026-11-24,50\n", true);
		Athlete ann = this.people.find(this.team, "Ann").orElseThrow();
		this.mornings.save(ann.id(), NewMorning.measured(TODAY, Method.STRAP, Posture.LYING, 52.0, null),
				Submission.page(ann.id(), Role.ATHLETE, UUID.randomUUID()));
		UUID id = importFile("person,date,rhr_bpm\nAnn,2026-11-24,51\nAnn,2026-11-25,60\n", false);
		assertThat(job(id).counts()).isEqualTo(new ImportJob.Counts(2, 2, 0, 0, 1, 1, 0, 1));
		assertThat(this.imports.problems(id, 0, 10)).singleElement()
			.satisfies((p) -> assertThat(p.reason().code()).isEqualTo("importRow.entered-by-hand"));
		assertThat(this.mornings.latest(ann.id(), TODAY).orElseThrow().entry().rhrBpm()).isEqualTo(52.0);
	}

	@Test
	void refusesStrangersUnlessTheyShallBeAdded() {
		UUID id = importFile("person,date,rhr_bpm\nAnn,2026-11-24,50\n", false);
		assertThat(job(id).counts().rejected()).isEqualTo(1);
		assertThat(this.imports.problems(id, 0, 10)).singleElement()
			.satisfies((p) -> assertThat(p.reason().code()).isEqualTo("importRow.unknown-person"));
		assertThat(this.squad.athletesIn(this.team)).isEmpty();
	}

	@Test
	void goesOnAfterAStop() {
		UUID id = start("person,date,rhr_bpm\nAnn,2026-11-24,50\nBob,2026-11-24,50\n", true);
		this.run.run(job(id), new AtomicBoolean(true));
		assertThat(job(id).state()).isEqualTo(ImportJob.State.RUNNING);
		assertThat(this.imports.unfinished()).extracting(ImportJob::id).contains(id);
		this.worker.runNow(id);
		assertThat(job(id).state()).isEqualTo(ImportJob.State.DONE);
		assertThat(job(id).counts().stored()).isEqualTo(2);
		this.worker.runNow(id);
		assertThat(job(id).counts().stored()).isEqualTo(2);
	}

	@Test
	void saysSoWhenTheStagedRowsAreGone() {
		UUID id = start("person,date,rhr_bpm\nAnn,2026-11-24,50\n", true);
		this.jdbc.sql("delete from import_row where job_id = ?").param(id).update();
		this.worker.runNow(id);
		assertThat(job(id).state()).isEqualTo(ImportJob.State.FAILED);
		assertThat(Objects.requireNonNull(job(id).problem()).code()).isEqualTo("importFile.lost");
	}

	@Test
	void assessesEveryDayItTakesIn() {
		importFile("person,date,rhr_bpm\nAnn,2026-11-24,50\nAnn,2026-11-25,50\n", true);
		Athlete ann = this.people.find(this.team, "Ann").orElseThrow();
		assertThat(this.assessments.of(ann.id(), TODAY.minusDays(1), TODAY)).hasSize(2);
	}

	@Test
	void takesInTheOpenDataAndTellsOfItsSuspectRows() {
		this.clock.set(LocalDate.of(2020, 6, 20));
		Path data = SharedData.folder().resolve("covid_onset_daily.csv");
		UUID id = this.imports.receive(this.team, this.coach, "open.csv", data);
		ColumnMapping guess = ColumnMapping.guess(job(id).headers());
		var columns = new TreeMap<>(guess.columns());
		columns.remove(ImportField.UNSURE);
		this.imports.start(id,
				Choice.ofEverybody(new ColumnMapping(columns, Method.WORN, Posture.LYING), Basis.CLUB_RECORD));
		this.worker.runNow(id);
		ImportJob job = job(id);
		assertThat(job.counts().rowsTotal()).isEqualTo(2767);
		assertThat(job.counts().rowsRead()).isEqualTo(2767);
		assertThat(job.counts().peopleCreated()).isEqualTo(185);
		List<ListedProblem> problems = this.imports.problems(id, 0, 100);
		assertThat(problems.stream().filter(ListedProblem::notice)).extracting(ListedProblem::line)
			.contains(468L, 2224L)
			.hasSize(6);
		assertThat(problems.stream().filter((p) -> !p.notice())).extracting((p) -> p.reason().code())
			.contains("entry.rmssd.range");
		assertThat(job.counts().stored() + job.counts().rejected()).isEqualTo(2767);
	}

	private UUID importFile(String text, boolean create) {
		UUID id = start(text, create);
		this.worker.runNow(id);
		return id;
	}

	private UUID start(String text, boolean create) {
		UUID id = this.imports.receive(this.team, this.coach, "mornings.csv", file(text));
		ColumnMapping mapping = ColumnMapping.guess(job(id).headers()).withDefaults(Method.STRAP, Posture.LYING);
		assertThat(this.imports.start(id, new Choice(mapping, create, create ? Basis.CLUB_RECORD : null))).isTrue();
		return id;
	}

	private Path file(String text) {
		try {
			return Files.writeString(Files.createTempFile(this.folder, "m", ".csv"), text, StandardCharsets.UTF_8);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private ImportJob job(UUID id) {
		return this.imports.find(id).orElseThrow();
	}

	private List<StoredMorning> entries(String name) {
		PersonId id = this.people.find(this.team, name).orElseThrow().id();
		return this.mornings.of(id, TODAY.minusDays(10), TODAY);
	}

}
