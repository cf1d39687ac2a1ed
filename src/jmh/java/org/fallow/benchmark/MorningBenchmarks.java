package org.fallow.benchmark;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.platform.SettableClock;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.JdbcTemplate;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * One morning, from the call until it is committed and assessed, beside a bare INSERT of
 * the same row into the same table, by turns: after 30 days of history and after ten
 * years. The database is Fallow's own, with everything on that makes a commit last.
 */
@Tag("benchmark")
@SpringBootTest(properties = "fallow.home=target/benchmarks/home")
@Import(SettableClock.class)
class MorningBenchmarks {

	private static final LocalDate FIRST = LocalDate.of(2026, 3, 2);

	private static final int ATHLETES = 40;

	private static final int WARM_UP_DAYS = 60;

	private static final int DAYS = 30;

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Mornings mornings;

	@Autowired
	private FlywayConnectionDetails details;

	private final Random random = new Random(11);

	private int sent;

	@Test
	void oneMorning() throws SQLException {
		try (Crowd crowd = new Crowd(this.details)) {
			this.clock.set(FIRST);
			Report.tell("one morning: %s", crowd.durability());
			Team team = Crowd.team(this.people);
			List<PersonId> recent = crowd.athletes(this.people, this.mornings, team, FIRST, 30, ATHLETES);
			List<PersonId> old = crowd.athletes(this.people, this.mornings, team, FIRST, 3650, ATHLETES);
			List<PersonId> bare = crowd.athletes(this.people, this.mornings, team, FIRST, 30, ATHLETES);
			crowd.owner().execute("vacuum analyze");
			measure(crowd.owner(), recent, old, bare);
			assertThat(count(crowd.owner(), recent)).isEqualTo(count(crowd.owner(), old)).isEqualTo(this.sent / 2);
		}
	}

	private void measure(JdbcTemplate owner, List<PersonId> recent, List<PersonId> old, List<PersonId> bare) {
		double[][] saved = new double[DAYS][];
		double[][] after = new double[DAYS][];
		double[][] inserted = new double[DAYS][];
		for (int day = -WARM_UP_DAYS; day < DAYS; day++) {
			LocalDate today = FIRST.plusDays(WARM_UP_DAYS + day + 1);
			this.clock.set(today);
			double[][] times = new double[3][ATHLETES];
			for (int i = 0; i < ATHLETES; i++) {
				times[0][i] = save(recent.get(i), today);
				times[1][i] = insert(owner, recent.get(i), bare.get(i), today);
				times[2][i] = save(old.get(i), today);
			}
			if (day >= 0) {
				saved[day] = times[0];
				inserted[day] = times[1];
				after[day] = times[2];
			}
		}
		tell("30 days of history", saved, inserted, "a bare INSERT");
		tell("10 years of history", after, inserted, "a bare INSERT");
		tell("10 years of history", after, saved, "30 days");
	}

	private double save(PersonId athlete, LocalDate today) {
		NewMorning morning = Crowd.morning(today, this.random);
		Submission submission = Submission.page(athlete, Role.ATHLETE, Ids.next());
		this.sent++;
		long begun = System.nanoTime();
		Saved saved = CurrentPerson.callAs(athlete, () -> this.mornings.save(athlete, morning, submission));
		double micros = (System.nanoTime() - begun) / 1e3;
		assertThat(saved).isEqualTo(new Saved.Stored(today.toString(), 1, false));
		return micros;
	}

	private static double insert(JdbcTemplate owner, PersonId model, PersonId athlete, LocalDate day) {
		Object[] row = owner.queryForObject("select * from morning_entry where athlete_id = ? and day = ?",
				(found, n) -> {
					Object[] values = new Object[found.getMetaData().getColumnCount()];
					Arrays.setAll(values, (i) -> {
						try {
							return found.getObject(i + 1);
						}
						catch (SQLException ex) {
							throw new IllegalStateException(ex);
						}
					});
					return values;
				}, model.value(), day);
		String sql = "insert into morning_entry values (" + "?, ".repeat(row.length - 1) + "?)";
		UUID actor = (UUID) row[0];
		for (int i = 0; i < row.length; i++) {
			row[i] = actor.equals(row[i]) ? athlete.value() : row[i];
		}
		long begun = System.nanoTime();
		int rows = owner.update(sql, row);
		double micros = (System.nanoTime() - begun) / 1e3;
		assertThat(rows).isOne();
		return micros;
	}

	private static void tell(String what, double[][] measured, double[][] reference, String name) {
		List<Double> ratios = new ArrayList<>();
		for (int day = 0; day < measured.length; day++) {
			ratios.add(Report.median(measured[day]) / Report.median(reference[day]));
		}
		double[] all = ratios.stream().mapToDouble((ratio) -> ratio).toArray();
		Report.tell("one morning, %s: %.0f us, %s: %.0f us, ratio %.2f (rounds: %.2f to %.2f)", what,
				Report.median(flat(measured)), name, Report.median(flat(reference)), Report.median(all),
				Report.percentile(all, 0.1), Report.percentile(all, 0.9));
	}

	private static double[] flat(double[][] rounds) {
		return Arrays.stream(rounds).flatMapToDouble(Arrays::stream).toArray();
	}

	private static int count(JdbcTemplate owner, List<PersonId> athletes) {
		return owner.queryForObject("""
				select count(*) from morning_entry e join assessment a using (athlete_id, day)
				where e.athlete_id = any (?) and e.day > ? and a.rhr_bpm = e.rhr_bpm""", Integer.class,
				athletes.stream().map(PersonId::value).toArray(UUID[]::new), FIRST);
	}

}
