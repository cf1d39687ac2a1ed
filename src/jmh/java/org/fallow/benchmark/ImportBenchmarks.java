package org.fallow.benchmark;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.imports.Choice;
import org.fallow.exchange.imports.ImportJob;
import org.fallow.exchange.imports.ImportWorker;
import org.fallow.exchange.imports.Imports;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.core.DayAssessment;
import org.fallow.platform.SettableClock;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The import of a file of mornings, from the file until its last row is committed, beside
 * COPY of the very rows it stored into a table with the same keys, checks and indexes: the
 * rows alone, and the rows with their assessments. By turns on Fallow's own database, with
 * everything on that makes a commit last.
 *
 * <p>
 * {@code -Dfallow.import.rows=1000000,10000000} sets other sizes of the file,
 * {@code -Dfallow.import.days} mornings of an athlete, {@code -Dfallow.import.rounds}
 * turns.
 */
@Tag("benchmark")
@SpringBootTest(properties = "fallow.home=target/benchmarks/import-home")
@Import({ SettableClock.class, WatchedChanges.class })
class ImportBenchmarks {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

	private static final int LOOKS = 10;

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Imports imports;

	@Autowired
	private ImportWorker worker;

	@Autowired
	private Assessments assessments;

	@Autowired
	private WatchedChanges changes;

	@Autowired
	private FlywayConnectionDetails details;

	@Test
	void files() throws Exception {
		try (Crowd crowd = new Crowd(this.details)) {
			this.clock.set(TODAY);
			Report.tell("import: %s", crowd.durability());
			turn(crowd.owner(), 5_000, Integer.getInteger("fallow.import.days", 300));
			for (String rows : System.getProperty("fallow.import.rows", "100000,300000").split(",")) {
				measure(crowd.owner(), Integer.parseInt(rows), Integer.getInteger("fallow.import.days", 300));
			}
		}
	}

	private void measure(JdbcTemplate owner, int rows, int days) throws Exception {
		int rounds = Integer.getInteger("fallow.import.rounds", 3);
		Turn[] turns = new Turn[rounds];
		for (int i = 0; i < rounds; i++) {
			turns[i] = turn(owner, rows, days);
			Report.tell("import of %d rows, turn %d: COPY %.2f s, rows %.2f s, assessed %.2f s (assessing %.2f s)",
					rows, i + 1, turns[i].copy, turns[i].rows, turns[i].assessed, turns[i].assessing);
		}
		double copy = Report.median(Arrays.stream(turns).mapToDouble(Turn::copy).toArray());
		double plain = Report.median(Arrays.stream(turns).mapToDouble((turn) -> turn.copy / turn.rows).toArray());
		double whole = Report.median(Arrays.stream(turns).mapToDouble((turn) -> turn.copy / turn.assessed).toArray());
		Report.tell("import of %d rows, %d mornings an athlete: COPY %.0f rows/s; rows alone %.1f %% of its speed, "
				+ "assessed %.1f %%; most heap after GC %d MB, most resident %d MB", rows, days, rows / copy,
				100 * plain, 100 * whole, Arrays.stream(turns).mapToLong(Turn::heap).max().orElseThrow(),
				Arrays.stream(turns).mapToLong(Turn::resident).max().orElseThrow());
	}

	private Turn turn(JdbcTemplate owner, int rows, int days) throws Exception {
		owner.execute("truncate import_job, import_problem, import_row, access_trace");
		Team team = Crowd.team(this.people);
		PersonId coach = Purpose.OPERATION.call(() -> this.people.addCoach(team.id(), "Cay"));
		int athletes = rows / days;
		addAthletes(owner, team, athletes);
		Path file = file(athletes, days);
		clear(owner);
		double plain = take(team, coach, file, false, athletes, days).seconds;
		double copy = copy(owner, athletes * days);
		clear(owner);
		resetPeak();
		Taken taken = take(team, coach, file, true, athletes, days);
		assertThat(owner.queryForObject("select count(*) from assessment", Integer.class)).isEqualTo(athletes * days);
		compare(owner, team, coach);
		Files.delete(file);
		return new Turn(copy, plain, taken.seconds, this.changes.seconds(), taken.heap >> 20, peak() >> 10);
	}

	/** Athletes who came today, so that the file is their history. */
	private static void addAthletes(JdbcTemplate owner, Team team, int count) {
		owner.update("""
				with added as (insert into person (id, name, zone_id, since_day, created_at)
					select gen_random_uuid(), 'Athlete ' || n, 'Z', ?, now() from generate_series(1, ?) n
					returning id, name)
				insert into membership (person_id, team_id, external_code, joined_at, shares)
				select id, ?, name, now(), true from added""", TODAY, count, team.id());
		owner.execute("analyze person, membership");
	}

	private static void clear(JdbcTemplate owner) {
		owner.execute("truncate morning_entry, morning_symptom, athlete_status, assessment, stage_decision");
		owner.execute("vacuum import_row");
	}

	/** Day by day, as a club's own table would be, so that athletes are scattered. */
	private static Path file(int athletes, int days) throws IOException {
		Path file = Files.createTempFile(Files.createDirectories(Path.of("target", "benchmarks")), "m", ".csv");
		Random random = new Random(3);
		try (BufferedWriter out = Files.newBufferedWriter(file)) {
			out.write("person,date,rhr_bpm,rmssd_ms\n");
			for (int back = days - 1; back >= 0; back--) {
				for (int i = 1; i <= athletes; i++) {
					out.write(String.format(Locale.ROOT, "Athlete %d,%s,%.1f,%.1f%n", i, TODAY.minusDays(back),
							50 + random.nextGaussian() * 2, Math.exp(4 + random.nextGaussian() * 0.15)));
				}
			}
		}
		return file;
	}

	private Taken take(Team team, PersonId coach, Path file, boolean assess, int athletes, int days) {
		Look look = new Look(Math.max(1, athletes / LOOKS));
		this.changes.watch(assess, look);
		long begun = System.nanoTime();
		ImportJob job = CurrentPerson.callAs(coach, () -> {
			UUID id = this.imports.receive(team.id(), coach, "mornings.csv", file);
			List<String> headers = this.imports.find(id).orElseThrow().headers();
			this.imports.start(id,
					Choice.ofPeopleHere(ColumnMapping.guess(headers).withDefaults(Method.STRAP, Posture.LYING)));
			this.worker.runNow(id);
			return this.imports.find(id).orElseThrow();
		});
		double seconds = (System.nanoTime() - begun - look.nanos) / 1e9;
		assertThat(job.state()).isEqualTo(ImportJob.State.DONE);
		assertThat(job.counts()).isEqualTo(
				new ImportJob.Counts(athletes * days, athletes * days, athletes * days, 0, 0, 0, 0, athletes));
		return new Taken(seconds, look.heap);
	}

	/** The rows stored last, into a table like theirs, by COPY in one transaction. */
	private static double copy(JdbcTemplate owner, int rows) throws IOException {
		Path binary = Files.createTempFile(Path.of("target", "benchmarks"), "copy", ".csv");
		owner.execute("drop table if exists morning_copy");
		owner.execute("create table morning_copy (like morning_entry including all)");
		owner.execute("alter table morning_copy add foreign key (athlete_id) references person, "
				+ "add foreign key (actor_id) references person");
		copying(owner, "copy (select * from morning_entry order by athlete_id, day) to stdout (format csv)", binary);
		long begun = System.nanoTime();
		copying(owner, "copy morning_copy from stdin (format csv)", binary);
		double seconds = (System.nanoTime() - begun) / 1e9;
		assertThat(owner.queryForObject("select count(*) from morning_copy", Integer.class)).isEqualTo(rows);
		owner.execute("drop table morning_copy");
		Files.delete(binary);
		return seconds;
	}

	private static void copying(JdbcTemplate owner, String sql, Path file) {
		owner.execute((ConnectionCallback<Long>) (connection) -> {
			var api = connection.unwrap(PGConnection.class).getCopyAPI();
			try {
				if (sql.endsWith("from stdin (format csv)")) {
					try (InputStream in = Files.newInputStream(file)) {
						return api.copyIn(sql, in, 1 << 16);
					}
				}
				try (OutputStream out = Files.newOutputStream(file)) {
					return api.copyOut(sql, out);
				}
			}
			catch (IOException ex) {
				throw new SQLException(ex);
			}
		});
	}

	/** One athlete's stored days beside a fold over everything at once. */
	private void compare(JdbcTemplate owner, Team team, PersonId coach) {
		PersonId athlete = new PersonId(owner.queryForObject(
				"select person_id from membership where team_id = ? order by person_id limit 1", UUID.class,
				team.id()));
		CurrentPerson.runAs(coach, () -> {
			List<AssessedDay> stored = this.assessments.of(athlete, LocalDate.EPOCH, TODAY);
			List<DayAssessment> whole = this.assessments.knownNow(athlete, LocalDate.EPOCH, TODAY);
			assertThat(stored).zipSatisfy(whole, ImportBenchmarks::compare);
		});
	}

	private static void compare(AssessedDay stored, DayAssessment whole) {
		assertThat(stored.day()).isEqualTo(whole.day());
		assertThat(stored.clearance()).isEqualTo(whole.clearance());
		assertThat(stored.rhrFlag()).isEqualTo(whole.rhr().flag());
		assertThat(stored.rhrReadings()).isEqualTo(whole.rhr().n());
		assertThat(places(stored.rhrBaseline())).isEqualTo(places(whole.rhr().baseline()));
		assertThat(places(stored.hrvMean())).isEqualTo(places(whole.hrv().mean()));
	}

	/** As the table keeps it. */
	private static @Nullable BigDecimal places(@Nullable Double value) {
		return (value == null) ? null : new BigDecimal(value, new MathContext(15)).setScale(6, RoundingMode.HALF_UP);
	}

	private static void resetPeak() throws IOException {
		System.gc();
		Files.writeString(Path.of("/proc/self/clear_refs"), "5");
	}

	/** The most memory this process held since then, kB. */
	private static long peak() throws IOException {
		return Files.readAllLines(Path.of("/proc/self/status"))
			.stream()
			.filter((line) -> line.startsWith("VmHWM:"))
			.mapToLong((line) -> Long.parseLong(line.replaceAll("\\D", "")))
			.findFirst()
			.orElseThrow();
	}

	/** Looks at the heap now and then while an import runs; its own time is left out. */
	private static final class Look implements Runnable {

		private final int every;

		private int calls;

		private long nanos;

		private long heap;

		Look(int every) {
			this.every = every;
		}

		@Override
		public void run() {
			if (++this.calls % this.every == 0) {
				long begun = System.nanoTime();
				System.gc();
				Runtime runtime = Runtime.getRuntime();
				this.heap = Math.max(this.heap, runtime.totalMemory() - runtime.freeMemory());
				this.nanos += System.nanoTime() - begun;
			}
		}

	}

	private record Taken(double seconds, long heap) {
	}

	/** Seconds and bytes of one turn. */
	private record Turn(double copy, double rows, double assessed, double assessing, long heap, long resident) {
	}

}
