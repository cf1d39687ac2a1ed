package org.fallow.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;

import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

/**
 * Athletes with a history, as many as a benchmark wants: one is imported and assessed as
 * ever, the others are copies of all its rows.
 */
final class Crowd implements AutoCloseable {

	static final String PASSWORD = "a long enough sentence";

	private static final List<String> COPIED = List.of("morning_entry", "session_log", "assessment", "athlete_status",
			"stage_decision");

	private final SingleConnectionDataSource connection;

	private final JdbcTemplate owner;

	Crowd(FlywayConnectionDetails details) {
		this.connection = new SingleConnectionDataSource(details.getJdbcUrl(),
				Objects.requireNonNull(details.getUsername()), Objects.requireNonNull(details.getPassword()), true);
		this.owner = new JdbcTemplate(this.connection);
	}

	/** SQL as the owner of the tables, to whom no row policy applies. */
	JdbcTemplate owner() {
		return this.owner;
	}

	/** What the database promises when it says committed. */
	String durability() {
		return List.of("server_version", "fsync", "synchronous_commit", "full_page_writes", "shared_buffers")
			.stream()
			.map((name) -> name + " " + this.owner.queryForObject("show " + name, String.class))
			.reduce((a, b) -> a + ", " + b)
			.orElseThrow();
	}

	/** Bytes of write-ahead log since the database was made. */
	long walBytes() {
		return Objects
			.requireNonNull(this.owner.queryForObject("select pg_current_wal_lsn() - '0/0'::pg_lsn", Long.class));
	}

	/**
	 * Processor time of the database's processes so far, microseconds; 0 where the system
	 * does not tell. Of processes that have ended what the first one was told counts.
	 */
	double databaseProcessorMicros() {
		try (Stream<String> lines = Files.lines(Path.of("target/benchmarks/home/database/postmaster.pid"))) {
			ProcessHandle first = ProcessHandle.of(Long.parseLong(lines.findFirst().orElseThrow().trim()))
				.orElseThrow();
			return ticks(first, 13, 17) + first.children().mapToDouble((child) -> ticks(child, 13, 15)).sum();
		}
		catch (IOException ex) {
			return 0;
		}
	}

	/** Fields of a process's stat, in hundredths of a second each, as microseconds. */
	private static double ticks(ProcessHandle process, int from, int to) {
		try {
			String stat = Files.readString(Path.of("/proc", String.valueOf(process.pid()), "stat"));
			String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
			double sum = 0;
			for (int field = from; field < to; field++) {
				sum += Double.parseDouble(fields[field - 2]);
			}
			return sum * 10_000;
		}
		catch (IOException ex) {
			return 0;
		}
	}

	static Team team(People people) {
		return Purpose.OPERATION
			.call(() -> people.addTeam(people.foundClub("Club " + UUID.randomUUID()).id(), "Team", ZoneOffset.UTC));
	}

	/**
	 * Athletes with a morning on each of some days up to today, and four sessions a week.
	 */
	List<PersonId> athletes(People people, Mornings mornings, Team team, LocalDate today, int days, int count) {
		PersonId first = Purpose.OPERATION.call(() -> people.addAthlete(team.id(), NewAthlete.named("Ann")).id());
		addSessions(first, today, days);
		Random random = new Random(7);
		List<NewMorning> history = new ArrayList<>();
		for (int back = days; back >= 0; back--) {
			history.add(morning(today.minusDays(back), random));
		}
		PersonId coach = Purpose.OPERATION.call(() -> people.addCoach(team.id(), "Cay"));
		CurrentPerson.runAs(coach, () -> mornings.takeIn(first, history, coach));
		List<PersonId> all = new ArrayList<>(copies(first, count - 1));
		all.add(first);
		return all;
	}

	/** An ordinary morning of an athlete who feels well. */
	static NewMorning morning(LocalDate day, Random random) {
		return NewMorning.measured(day, Method.STRAP, Posture.LYING, 50 + Math.rint(random.nextGaussian() * 20) / 10,
				Math.exp(4 + random.nextGaussian() * 0.15));
	}

	private void addSessions(PersonId athlete, LocalDate today, int days) {
		for (int back = days; back > 0; back--) {
			LocalDate day = today.minusDays(back);
			if (day.toEpochDay() % 7 < 4) {
				UUID key = Ids.next();
				this.owner.update("""
						insert into session_log (athlete_id, key, revision, day, activity, minutes, rpe, after_session,
							removed, zone_id, recorded_at, recorded_on, written_at, actor_id, role, source, request_id)
						values (?, ?, 1, ?, 'RUN', 50, 4, '{}', false, 'Z', ?, ?, now(), ?, 'ATHLETE', 'IMPORT', ?)""",
						athlete.value(), key.toString(), day, day.atTime(LocalTime.of(20, 0)).atOffset(ZoneOffset.UTC),
						day, athlete.value(), key);
			}
		}
	}

	private List<PersonId> copies(PersonId first, int count) {
		List<PersonId> copies = new ArrayList<>();
		for (int i = 0; i < count; i++) {
			copies.add(PersonId.next());
		}
		UUID[] ids = copies.stream().map(PersonId::value).toArray(UUID[]::new);
		this.owner.execute("create temporary table fresh (id uuid primary key)");
		this.owner.update("insert into fresh select unnest(?)", (Object) ids);
		copy("person", "id", first);
		copy("membership", "person_id", first);
		COPIED.forEach((table) -> copy(table, "athlete_id", first));
		this.owner.execute("drop table fresh");
		return copies;
	}

	private void copy(String table, String key, PersonId first) {
		String others = this.owner.queryForObject("""
				select string_agg(quote_ident(attname), ', ') from pg_attribute
				where attrelid = ?::regclass and attnum > 0 and not attisdropped and attname <> ?""", String.class,
				table, key);
		String values = "membership".equals(table) ? others.replace("external_code", "null") : others;
		this.owner.update("insert into " + table + " (" + key + ", " + others + ") select f.id, " + values
				+ " from fresh f, " + table + " t where t." + key + " = ?", first.value());
	}

	/** Gives each an account with the password that this person has already. */
	void accounts(PersonId opened, List<PersonId> athletes) {
		for (PersonId athlete : athletes) {
			this.owner.update("""
					insert into account (person_id, username, password_hash, created_at)
					select ?, ?, password_hash, created_at from account where person_id = ?""", athlete.value(),
					athlete + "@club.example", opened.value());
		}
	}

	@Override
	public void close() {
		this.connection.destroy();
	}

}
