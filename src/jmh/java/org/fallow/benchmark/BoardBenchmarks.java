package org.fallow.benchmark;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Board and roll of squads of 24, 500 and 10,000 within a federation, asked over HTTP one
 * after the other by a signed-in coach, by turns with the same squad alone in a small
 * database. {@code -Dfallow.athletes=1000000} is the federation's size, 20,000 where it
 * is not given; {@code -Dfallow.data=} the folder where the databases are kept; a million
 * athletes take about 40 GB. {@code -Dfallow.requests=} is how often each page is asked,
 * a tenth as often for 10,000. The time of the processor is that of this JVM, which asks
 * too, and of the database: what a request would take on a machine with nothing else to do.
 * {@code -Dfallow.squads=24,500} leaves the third out.
 */
@Tag("benchmark")
class BoardBenchmarks {

	private static final Path DATA = Path.of(System.getProperty("fallow.data", "target/benchmarks/data"));

	private static final int ATHLETES = Integer.getInteger("fallow.athletes", 20_000);

	private static final int REQUESTS = Integer.getInteger("fallow.requests", 200);

	private static final List<Integer> SQUADS = List.of(24, 500, 10_000);

	private static final List<Integer> ASKED = Arrays.stream(System.getProperty("fallow.squads", "24,500,10000").split(","))
		.map(Integer::valueOf)
		.toList();

	private static final Pattern ROWS = Pattern.compile("row-head");

	@Test
	void growWithTheRowsShownOnly() throws Exception {
		int others = ATHLETES - SQUADS.stream().mapToInt(Integer::intValue).sum();
		Path home = DATA.resolve("federation-" + ATHLETES);
		LocalDate day = new Federation(home, SQUADS, others).day();
		try (RunningFallow large = RunningFallow.start(home, day)) {
			Report.tell("board and roll: %s", sizes(large));
			for (int size : ASKED) {
				Path alone = DATA.resolve("squad-" + size);
				LocalDate its = new Federation(alone, List.of(size), 0).day();
				try (RunningFallow small = RunningFallow.start(alone, its)) {
					compare("/board", size, large, small);
					compare("/roll", size, large, small);
				}
			}
		}
	}

	private static String sizes(RunningFallow fallow) {
		return org.springframework.jdbc.core.simple.JdbcClient.create(fallow.owner())
			.sql("""
					select format('%s athletes, about %s million assessments, database %s',
						(select count(*) from membership),
						(select round(reltuples / 1e6) from pg_class where relname = 'assessment'),
						pg_size_pretty(pg_database_size(current_database())))""")
			.query(String.class)
			.single();
	}

	private static void compare(String path, int size, RunningFallow large, RunningFallow small) throws Exception {
		SignedIn here = new SignedIn(large.port(), Federation.coachOf(size), Federation.PASSWORD);
		SignedIn there = new SignedIn(small.port(), Federation.coachOf(size), Federation.PASSWORD);
		int times = (size > 1_000) ? Math.max(2, REQUESTS / 10) : REQUESTS;
		for (int i = 0; i < Math.max(2, times / 4); i++) {
			milliseconds(here, path, size);
			milliseconds(there, path, size);
		}
		double[] among = new double[times];
		double[] alone = new double[times];
		double[] worked = new double[2];
		for (int i = 0; i < times; i++) {
			double begun = large.worked();
			among[i] = milliseconds(here, path, size);
			worked[0] += (large.worked() - begun) / times;
			begun = small.worked();
			alone[i] = milliseconds(there, path, size);
			worked[1] += (small.worked() - begun) / times;
		}
		Report.tell("%s of %d among %d: p50 %.1f ms, p99 %.1f ms, processor %.1f ms; alone p50 %.1f ms, p99 %.1f ms, "
				+ "processor %.1f ms; ratio of p50 %.2f, of processor %.2f; %d bytes",
				path, size, ATHLETES, Report.median(among), Report.percentile(among, 0.99), worked[0],
				Report.median(alone), Report.percentile(alone, 0.99), worked[1],
				Report.median(among) / Report.median(alone), worked[0] / worked[1], here.get(path).body().length);
	}

	private static double milliseconds(SignedIn coach, String path, int rows) throws IOException, InterruptedException {
		long begun = System.nanoTime();
		HttpResponse<byte[]> answer = coach.get(path);
		double took = (System.nanoTime() - begun) / 1e6;
		assertThat(answer.statusCode()).isEqualTo(200);
		assertThat(ROWS.matcher(SignedIn.text(answer)).results().count()).isEqualTo(rows);
		return took;
	}

}
