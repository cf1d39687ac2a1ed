package org.fallow.entry;

import java.time.LocalDate;
import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.team.OfAthlete;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What was measured again beside entries, as it is stored.
 */
@Service
@Transactional(readOnly = true)
public class Measurements {

	/** Their table. */
	public static final String TABLE = "measured_again";

	private final JdbcClient client;

	Measurements(JdbcClient client) {
		this.client = client;
	}

	/**
	 * What was measured again on some days, in all entries of the person.
	 * @param athlete whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @return in the order recorded
	 */
	@OfAthlete
	public List<MeasuredAgain> of(PersonId athlete, LocalDate from, LocalDate to) {
		return this.client
			.sql("select day, recorded_at, recorded_on, kind, method, posture, rhr_bpm from " + TABLE
					+ " where athlete_id = " + SeveralEntries.IDS
					+ " and day between :from and :to order by recorded_at, key")
			.param("athlete", athlete.value())
			.param("from", from)
			.param("to", to)
			.query((row, number) -> new MeasuredAgain(Columns.day(row, "day"), Columns.recorded(row),
					MeasuredAgain.Kind.valueOf(row.getString("kind")), Method.valueOf(row.getString("method")),
					Posture.valueOf(row.getString("posture")), row.getDouble("rhr_bpm")))
			.list();
	}

}
