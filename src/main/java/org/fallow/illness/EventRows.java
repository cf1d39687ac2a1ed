package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Columns;
import org.fallow.entry.Recorded;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.ReportKind;
import org.fallow.rules.Clearance;
import org.fallow.team.Role;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The rows of illness events: one table for all kinds, each using its own columns.
 */
@Component
class EventRows {

	static final String TABLE = "illness_event";

	static final String COLUMNS = "event, until_day, report_kind, worst, ceiling, clinician, clinician_role, words, clinician_words";

	private final JdbcClient client;

	EventRows(JdbcClient client) {
		this.client = client;
	}

	List<StoredEvent> of(PersonId athlete) {
		return this.client
			.sql("select * from illness_event where athlete_id = ? order by recorded_on, recorded_at, written_at, key")
			.param(athlete.value())
			.query(EventRows::stored)
			.list();
	}

	static @Nullable Object[] values(IllnessEvent event) {
		if (event instanceof IllnessEvent.Report e) {
			return row("REPORT", null, e.kind(), e.worst(), null, null, null, e.note(), null);
		}
		if (event instanceof IllnessEvent.Cleared e) {
			return row("CLEARED", e.until(), null, null, e.ceiling(), e.who(), e.role(), e.note(), null);
		}
		if (event instanceof IllnessEvent.Stricter e) {
			return row("STRICTER", e.until(), null, null, e.ceiling(), null, null, e.reason(), null);
		}
		if (event instanceof IllnessEvent.Hold e) {
			return row("HOLD", null, null, null, null, null, null, e.reason(), null);
		}
		if (event instanceof IllnessEvent.Withdrawal e) {
			return row("WITHDRAWAL", null, null, null, null, null, null, e.reason(), null);
		}
		if (event instanceof IllnessEvent.SymptomsOnly e) {
			return row("SYMPTOMS_ONLY", null, null, null, null, null, null, e.reason(), null);
		}
		if (event instanceof IllnessEvent.WorkingLevel e) {
			return row("WORKING_LEVEL", null, null, null, null, e.who(), e.role(), e.reason(), e.word());
		}
		throw new IllegalArgumentException("an unknown event: " + event);
	}

	private static @Nullable Object[] row(@Nullable Object... values) {
		return values;
	}

	private static StoredEvent stored(ResultSet row, int number) throws SQLException {
		return new StoredEvent(event(row), new PersonId(row.getObject("actor_id", UUID.class)),
				Role.valueOf(row.getString("role")));
	}

	private static IllnessEvent event(ResultSet row) throws SQLException {
		LocalDate day = Columns.day(row, "day");
		Recorded recorded = Columns.recorded(row);
		String words = row.getString("words");
		return switch (row.getString("event")) {
			case "REPORT" -> new IllnessEvent.Report(day, recorded, ReportKind.valueOf(row.getString("report_kind")),
					Columns.integer(row, "worst"), words);
			case "CLEARED" -> new IllnessEvent.Cleared(day, Columns.dayOrNull(row, "until_day"), recorded,
					Clearance.valueOf(row.getString("ceiling")), row.getString("clinician"),
					row.getString("clinician_role"), words);
			case "STRICTER" -> new IllnessEvent.Stricter(day, Columns.day(row, "until_day"), recorded,
					Clearance.valueOf(row.getString("ceiling")), Objects.requireNonNull(words));
			case "HOLD" -> new IllnessEvent.Hold(day, recorded, Objects.requireNonNull(words));
			case "WITHDRAWAL" -> new IllnessEvent.Withdrawal(day, recorded, Objects.requireNonNull(words));
			case "SYMPTOMS_ONLY" -> new IllnessEvent.SymptomsOnly(day, recorded, Objects.requireNonNull(words));
			case "WORKING_LEVEL" -> new IllnessEvent.WorkingLevel(day, recorded, row.getString("clinician"),
					row.getString("clinician_role"), row.getString("clinician_words"), Objects.requireNonNull(words));
			default -> throw new IllegalStateException("an unknown event in the database");
		};
	}

}
