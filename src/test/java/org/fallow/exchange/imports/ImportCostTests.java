package org.fallow.exchange.imports;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;

import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.platform.Statements;
import org.fallow.team.Basis;
import org.fallow.team.People;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.JdbcTemplate;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What an import sends to the database: as much for an athlete's year as for a week, and
 * each row of the file written once.
 */
@DatabaseTest
@Import({ SettableClock.class, Statements.class })
@SuppressWarnings("NullAway.Init")
class ImportCostTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Imports imports;

	@Autowired
	private ImportRun run;

	@Autowired
	private JdbcTemplate jdbc;

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
	void sendsNoMoreStatementsForMoreRowsOfAnAthlete() throws IOException {
		sent(receive(7, "Abe"));
		List<String> week = sent(receive(7, "Ann"));
		List<String> year = sent(receive(365, "Bea"));
		assertThat(week).isNotEmpty();
		assertThat(year).hasSameSizeAs(week);
	}

	@Test
	void sendsAsManyStatementsForEachFurtherAthlete() throws IOException {
		int two = sent(receive(7, "Ann", "Bea")).size();
		int three = sent(receive(7, "Cid", "Dee", "Eve")).size();
		int four = sent(receive(7, "Flo", "Gus", "Hal", "Ida")).size();
		assertThat(four - three).isEqualTo(three - two).isPositive();
	}

	@Test
	void writesNoRowOfTheFileAgain() throws IOException {
		UUID id = receive(7, "Ann", "Bea");
		List<String> before = versions(id);
		this.run.run(job(id), new AtomicBoolean(true));
		assertThat(versions(id)).hasSize(14).isEqualTo(before);
	}

	/** Where each row's only version is; a row written again is elsewhere. */
	private List<String> versions(UUID id) {
		return this.jdbc.queryForList("select ctid::text || xmin from import_row where job_id = ? order by line",
				String.class, id);
	}

	private List<String> sent(UUID id) {
		List<String> sent = Statements.of(() -> this.run.run(job(id), new AtomicBoolean()));
		ImportJob done = job(id);
		assertThat(done.state()).isEqualTo(ImportJob.State.DONE);
		assertThat(done.counts().stored()).isEqualTo(done.counts().rowsTotal());
		return sent;
	}

	private ImportJob job(UUID id) {
		return this.imports.find(id).orElseThrow();
	}

	private UUID receive(int days, String... names) throws IOException {
		List<String> lines = new ArrayList<>(List.of("person,date,rhr_bpm"));
		for (String name : names) {
			for (int back = days - 1; back >= 0; back--) {
				lines.add(name + "," + TODAY.minusDays(back) + "," + (50 + back % 3));
			}
		}
		Path file = Files.write(this.folder.resolve(UUID.randomUUID() + ".csv"), lines);
		UUID id = this.imports.receive(this.team, this.coach, "mornings.csv", file);
		ColumnMapping mapping = ColumnMapping.guess(job(id).headers()).withDefaults(Method.STRAP, Posture.LYING);
		assertThat(this.imports.start(id, Choice.ofEverybody(mapping, Basis.CLUB_RECORD))).isTrue();
		return id;
	}

}
