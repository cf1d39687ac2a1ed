package org.fallow.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import org.fallow.baseline.DailyFlags;
import org.fallow.entry.Posture;
import org.fallow.rules.DefaultRules;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * The same baselines over the same rows by Fallow's kernel, by PostgreSQL and by pandas
 * (Debian's python3-pandas; left out with a word where it is missing):
 * {@code mvn test -Pbenchmarks -Dtest=DatabaseAndPandasBenchmarks}. Each says how many
 * mornings it found low, so that all are seen to do the same work.
 */
@Tag("benchmark")
class DatabaseAndPandasBenchmarks {

	private static final int ATHLETES = 100;

	private static final int DAYS = 365;

	private static final String PYTHON = "/usr/bin/python3";

	private static final String SQL = """
			select count(*) filter (where n >= 7),
				count(*) filter (where n >= 7 and rhr - median < - greatest(5, 2 * greatest(1, 1.4826 * mad))),
				count(*) filter (where n >= 7 and recent < mean - greatest(0.05, sd))
			from reading r
			cross join lateral (select count(*) as n, percentile_cont(0.5) within group (order by w.rhr) as median,
					avg(w.ln) as mean, stddev_samp(w.ln) as sd
				from reading w where w.athlete = r.athlete and w.day >= r.day - 28 and w.day < r.day) b
			cross join lateral (select percentile_cont(0.5) within group (order by abs(w.rhr - median)) as mad
				from reading w where w.athlete = r.athlete and w.day >= r.day - 28 and w.day < r.day) m
			cross join lateral (select avg(w.ln) as recent
				from reading w where w.athlete = r.athlete and w.day > r.day - 7 and w.day <= r.day) h""";

	@Test
	void tellsTheRatios() throws Exception {
		AthleteYears years = AthleteYears.of(ATHLETES, DAYS, 0);
		long rows = years.athletes().stream().mapToLong((one) -> one.day().length).sum();
		kernel(years);
		kernel(years);
		double[] mine = kernel(years);
		Report.tell("kernel: %.0f athlete-days/s on one core, %.0f low", rows / mine[0], mine[1]);
		double[] sql = sql(years);
		Report.tell("PostgreSQL: %.0f athlete-days/s, %.0f low; kernel / PostgreSQL %.0f", rows / sql[0], sql[1],
				sql[0] / mine[0]);
		assertThat(sql[1]).isCloseTo(mine[1], within(0.01 * rows));
		if (Files.isExecutable(Path.of(PYTHON))) {
			double[] pandas = pandas(years);
			Report.tell("pandas: %.0f athlete-days/s, %.0f low; kernel / pandas %.0f", rows / pandas[0], pandas[1],
					pandas[0] / mine[0]);
			assertThat(pandas[1]).isCloseTo(mine[1], within(0.01 * rows));
		}
		else {
			Report.tell("pandas: not here");
		}
	}

	/** Seconds for all rows, and how many were low. */
	private static double[] kernel(AthleteYears years) {
		DailyFlags flags = new DailyFlags(DefaultRules.ruleSet(), Posture.LYING);
		double[] dev = new double[DAYS];
		byte[] rhr = new byte[DAYS];
		byte[] hrv = new byte[DAYS];
		boolean[] above = new boolean[DAYS];
		int rounds = 100;
		long low = 0;
		long begun = System.nanoTime();
		for (int round = 0; round < rounds; round++) {
			low = 0;
			for (AthleteYears.Athlete athlete : years.athletes()) {
				flags.rhr(athlete.day(), athlete.rhr(), dev, rhr, above);
				flags.hrv(athlete.day(), athlete.ln(), hrv);
				for (int i = 0; i < athlete.day().length; i++) {
					low += (rhr[i] == 0) ? 1 : 0;
				}
			}
		}
		return new double[] { (System.nanoTime() - begun) / 1e9 / rounds, low };
	}

	private static double[] sql(AthleteYears years) throws SQLException, IOException {
		try (EmbeddedPostgres postgres = EmbeddedPostgres.start();
				Connection connection = postgres.getPostgresDatabase().getConnection();
				Statement statement = connection.createStatement()) {
			statement.execute("create table reading (athlete integer, day integer, rhr float8, ln float8)");
			connection.unwrap(PGConnection.class)
				.getCopyAPI()
				.copyIn("copy reading from stdin (format csv)",
						new java.io.ByteArrayInputStream(csv(years).getBytes(StandardCharsets.UTF_8)));
			statement.execute("create index on reading (athlete, day) include (rhr, ln)");
			statement.execute("vacuum analyze reading");
			statement.execute("set max_parallel_workers_per_gather = 0");
			long begun = System.nanoTime();
			try (ResultSet result = statement.executeQuery(SQL)) {
				result.next();
				return new double[] { (System.nanoTime() - begun) / 1e9, result.getLong(2) };
			}
		}
	}

	private static double[] pandas(AthleteYears years) throws IOException, InterruptedException {
		Path file = Files.createTempFile("readings", ".csv");
		Files.writeString(file, csv(years));
		Process python = new ProcessBuilder(PYTHON, "src/jmh/python/rolling.py", file.toString())
			.redirectError(ProcessBuilder.Redirect.INHERIT)
			.start();
		String said = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		assertThat(python.waitFor()).as(said).isZero();
		Files.delete(file);
		String[] words = said.trim().split(" ");
		return new double[] { Double.parseDouble(words[0]), Double.parseDouble(words[1]) };
	}

	private static String csv(AthleteYears years) {
		StringBuilder csv = new StringBuilder();
		for (int a = 0; a < years.athletes().size(); a++) {
			AthleteYears.Athlete athlete = years.athletes().get(a);
			for (int i = 0; i < athlete.day().length; i++) {
				csv.append(String.format(Locale.ROOT, "%d,%d,%s,%s%n", a, athlete.day()[i], athlete.rhr()[i],
						athlete.ln()[i]));
			}
		}
		return csv.toString();
	}

}
