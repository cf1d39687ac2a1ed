package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Columns;
import org.fallow.entry.FactRows;
import org.fallow.entry.Recorded;
import org.fallow.entry.SeveralEntries;
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

	/** The kind among {@link FactRows}. */
	static final int KIND = FactRows.OWN;

	static final String COLUMNS = "event, until_day, report_kind, worst, ceiling, clinician, clinician_role, words, clinician_words";

	/** Laid out as {@link FactRows}, with who said it at the end. */
	private static final String SELECT = "select " + KIND + " "
			+ """
					 as kind, written_at as written, key, %REVISION% as revision, day, until_day, recorded_at, recorded_on, event as code,
						report_kind as detail, worst as number, null::numeric as amount, null::boolean as truth,
						array[ceiling, clinician, clinician_role, clinician_words] as list, words, actor_id, role, written_at
					from illness_event where athlete_id = %IDS%\s"""
				.replace("%REVISION%", SeveralEntries.REVISION)
				.replace("%IDS%", SeveralEntries.IDS);

	/** Parameter {@code athlete}. */
	static final String FACTS = "select " + FactRows.COLUMNS + "from (" + SELECT + ") event ";

	private final JdbcClient client;

	EventRows(JdbcClient client) {
		this.client = client;
	}

	List<StoredEvent> of(PersonId athlete) {
		return this.client.sql(SELECT + " order by recorded_on, recorded_at, written_at, key")
			.param("athlete", athlete.value())
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

	static IllnessEvent event(ResultSet row) throws SQLException {
		LocalDate day = Columns.day(row, "day");
		Recorded recorded = Columns.recorded(row);
		String words = row.getString("words");
		@Nullable String[] more = (String[]) row.getArray("list").getArray();
		return switch (row.getString("code")) {
			case "REPORT" -> new IllnessEvent.Report(day, recorded, ReportKind.valueOf(row.getString("detail")),
					Columns.integer(row, "number"), words);
			case "CLEARED" -> new IllnessEvent.Cleared(day, Columns.dayOrNull(row, "until_day"), recorded,
					Clearance.valueOf(some(more[0])), some(more[1]), some(more[2]), words);
			case "STRICTER" -> new IllnessEvent.Stricter(day, Columns.day(row, "until_day"), recorded,
					Clearance.valueOf(some(more[0])), some(words));
			case "HOLD" -> new IllnessEvent.Hold(day, recorded, some(words));
			case "WITHDRAWAL" -> new IllnessEvent.Withdrawal(day, recorded, some(words));
			case "SYMPTOMS_ONLY" -> new IllnessEvent.SymptomsOnly(day, recorded, some(words));
			case "WORKING_LEVEL" ->
				new IllnessEvent.WorkingLevel(day, recorded, more[1], more[2], more[3], some(words));
			default -> throw new IllegalStateException("an unknown event in the database");
		};
	}

	private static String some(@Nullable String text) {
		return Objects.requireNonNull(text);
	}

}
