package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.team.OfAthlete;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

/**
 * What was entered about athletes after a sign-in by a password that a link of somebody
 * else's had set: whoever used the link may have entered it.
 */
@Repository
@Transactional(readOnly = true)
public class AfterLinks {

	/** For so many days coaches are told, the present one among them. */
	public static final int TOLD_DAYS = 28;

	private static final Map<String, TraceSubject> TABLES = tables();

	private static final String SELECT = TABLES.entrySet()
		.stream()
		.map((table) -> "select '" + table.getValue() + "' as what, recorded_at, link_by, actor_id from "
				+ table.getKey() + " where athlete_id = any (fallow_entries(:athlete)) and link_by is not null"
				+ " and recorded_on between :from and :to")
		.collect(Collectors.joining(" union all ", "", " order by recorded_at desc"));

	private final JdbcClient jdbc;

	AfterLinks(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * What was entered so in the last days, as known by the end of a day.
	 * @param athlete about whom, all entries of the person
	 * @param on the civil day
	 * @return newest first
	 */
	@OfAthlete
	public EnteredAfterLink knownOn(PersonId athlete, LocalDate on) {
		return new EnteredAfterLink(this.jdbc.sql(SELECT)
			.param("athlete", athlete.value())
			.param("from", on.minusDays(TOLD_DAYS - 1L))
			.param("to", on)
			.query(AfterLinks::fact)
			.list());
	}

	private static EnteredAfterLink.Fact fact(ResultSet row, int number) throws SQLException {
		return new EnteredAfterLink.Fact(TraceSubject.valueOf(row.getString("what")),
				row.getObject("recorded_at", OffsetDateTime.class).toInstant(), row.getString("link_by"),
				new PersonId(row.getObject("actor_id", UUID.class)));
	}

	private static Map<String, TraceSubject> tables() {
		Map<String, TraceSubject> tables = new LinkedHashMap<>();
		tables.put("morning_entry", TraceSubject.MORNING);
		tables.put("session_log", TraceSubject.SESSION);
		tables.put("absence", TraceSubject.ABSENCE);
		tables.put("medicine_change", TraceSubject.MEDICINE);
		tables.put("known_symptom", TraceSubject.KNOWN_SYMPTOM);
		tables.put("health_condition", TraceSubject.CONDITION);
		tables.put("vaccination", TraceSubject.VACCINATION);
		tables.put("device_change", TraceSubject.DEVICE);
		tables.put("illness_event", TraceSubject.ILLNESS);
		return tables;
	}

}
