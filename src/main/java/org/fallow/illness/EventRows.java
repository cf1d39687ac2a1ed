package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Columns;
import org.fallow.entry.FactRows;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SeveralEntries;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.ClinicianWord;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.OwnFigure;
import org.fallow.illness.core.OwnFigureEnded;
import org.fallow.illness.core.ReportKind;
import org.fallow.illness.core.SlipTerms;
import org.fallow.illness.core.Spoken;
import org.fallow.illness.core.Tick;
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

	static final String COLUMNS = "event, until_day, report_kind, worst, ceiling, clinician, clinician_role, words, clinician_words, "
			+ "word_by, examined_on, no_illness, examined, names_key, says_able, says_eating, slip_session, slip_tick, slip_terms, "
			+ "figure_method, figure_posture, figure_bpm, spoken_on";

	private static final List<String> NAMES = List.of(COLUMNS.split(", "));

	/** Laid out as {@link FactRows}, with who said it at the end. */
	private static final String SELECT = "select " + KIND + " "
			+ """
					 as kind, written_at as written, key, %REVISION% as revision, day, until_day, recorded_at, recorded_on, event as code,
						report_kind as detail, worst as number, null::numeric as amount, null::boolean as truth,
						array[ceiling, clinician, clinician_role, clinician_words, word_by, examined_on::text, no_illness::text,
							array_to_string(examined, ' '), names_key, says_able::text, says_eating::text,
							case when athlete_id = :athlete then slip_session else athlete_id || ':' || slip_session end,
							slip_tick, slip_terms, figure_method, figure_posture, figure_bpm::text, spoken_on::text] as list, words, actor_id, role, written_at
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
			return row("event", "REPORT", "report_kind", e.kind(), "worst", e.worst(), "words", e.note());
		}
		if (event instanceof IllnessEvent.Cleared e) {
			return cleared(e);
		}
		if (event instanceof IllnessEvent.Stricter e) {
			return row("event", "STRICTER", "until_day", e.until(), "ceiling", e.ceiling(), "words", e.reason(),
					"word_by", by(e.word()), "clinician", who(e.word()));
		}
		if (event instanceof IllnessEvent.Lifted e) {
			return row("event", "LIFTED", "names_key", e.key(), "words", e.reason(), "word_by", by(e.word()),
					"clinician", who(e.word()));
		}
		if (event instanceof IllnessEvent.SaidToday e) {
			return row("event", "SAID_TODAY", "says_able", e.able(), "says_eating", e.eating(), "words", e.reason());
		}
		if (event instanceof IllnessEvent.Hold e) {
			return row("event", "HOLD", "words", e.reason());
		}
		if (event instanceof IllnessEvent.Withdrawal e) {
			return row("event", "WITHDRAWAL", "words", e.reason());
		}
		if (event instanceof IllnessEvent.SymptomsOnly e) {
			return row("event", "SYMPTOMS_ONLY", "words", e.reason());
		}
		if (event instanceof IllnessEvent.WorkingLevel e) {
			return row("event", "WORKING_LEVEL", "clinician", e.who(), "clinician_role", e.role(), "words", e.reason(),
					"clinician_words", e.word());
		}
		if (event instanceof IllnessEvent.Slip e) {
			return row("event", "SLIP", "slip_session", e.tick().session(), "slip_tick", e.tick().code(), "slip_terms",
					e.terms());
		}
		if (event instanceof IllnessEvent.SlipAccepted e) {
			return row("event", "SLIP_ACCEPTED", "words", e.reason());
		}
		if (event instanceof IllnessEvent.Asked e) {
			return row("event", "ASKED", "words", e.words());
		}
		if (event instanceof OwnFigure e) {
			return row("event", "OWN_FIGURE", "figure_method", e.method(), "figure_posture", e.posture(), "figure_bpm",
					e.bpm(), "clinician", e.who(), "clinician_role", e.role(), "spoken_on", e.spokenOn(), "words",
					e.note());
		}
		if (event instanceof OwnFigureEnded e) {
			return row("event", "OWN_FIGURE_ENDED", "figure_method", e.method(), "figure_posture", e.posture(), "words",
					e.reason());
		}
		throw new IllegalArgumentException("an unknown event: " + event);
	}

	private static @Nullable Object[] cleared(IllnessEvent.Cleared e) {
		List<String> examined = e.word()
			.examined()
			.stream()
			.map((one) -> one.symptom().name() + ":" + one.severity().name())
			.toList();
		return row("event", "CLEARED", "until_day", e.until(), "ceiling", e.ceiling(), "clinician", e.who(),
				"clinician_role", e.role(), "words", e.note(), "word_by", e.word().by(), "examined_on",
				e.word().examinedOn(), "no_illness", e.word().noIllness(), "examined", Columns.array("text", examined));
	}

	private static Spoken.@Nullable By by(@Nullable Spoken word) {
		return (word == null) ? null : word.by();
	}

	private static @Nullable String who(@Nullable Spoken word) {
		return (word == null) ? null : word.who();
	}

	/** Values in the order of the columns, from names and values by turns. */
	private static @Nullable Object[] row(@Nullable Object... named) {
		@Nullable Object[] values = new Object[NAMES.size()];
		for (int i = 0; i < named.length; i += 2) {
			values[NAMES.indexOf(some((String) named[i]))] = named[i + 1];
		}
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
					Clearance.valueOf(some(more[0])), some(more[1]), some(more[2]), words, word(more));
			case "STRICTER" -> new IllnessEvent.Stricter(day, Columns.day(row, "until_day"), recorded,
					Clearance.valueOf(some(more[0])), some(words), row.getString("key"), spoken(more));
			case "LIFTED" -> new IllnessEvent.Lifted(day, recorded, some(more[8]), some(words), spoken(more));
			case "SAID_TODAY" -> new IllnessEvent.SaidToday(day, recorded, Boolean.parseBoolean(more[9]),
					Boolean.parseBoolean(more[10]), some(words));
			case "HOLD" -> new IllnessEvent.Hold(day, recorded, some(words));
			case "WITHDRAWAL" -> new IllnessEvent.Withdrawal(day, recorded, some(words));
			case "SYMPTOMS_ONLY" -> new IllnessEvent.SymptomsOnly(day, recorded, some(words));
			case "WORKING_LEVEL" ->
				new IllnessEvent.WorkingLevel(day, recorded, more[1], more[2], more[3], some(words));
			case "SLIP" -> new IllnessEvent.Slip(day, recorded, new Tick(more[11], some(more[12])),
					SlipTerms.valueOf(some(more[13])));
			case "SLIP_ACCEPTED" -> new IllnessEvent.SlipAccepted(day, recorded, some(words));
			case "ASKED" -> new IllnessEvent.Asked(day, recorded, some(words));
			case "OWN_FIGURE" -> new OwnFigure(day, recorded, Method.valueOf(some(more[14])),
					Posture.valueOf(some(more[15])), Double.parseDouble(some(more[16])), some(more[1]), some(more[2]),
					LocalDate.parse(some(more[17])), words);
			case "OWN_FIGURE_ENDED" -> new OwnFigureEnded(day, recorded, Method.valueOf(some(more[14])),
					Posture.valueOf(some(more[15])), some(words));
			default -> throw new IllegalStateException("an unknown event in the database");
		};
	}

	private static ClinicianWord word(@Nullable String[] more) {
		String examinedOn = more[5];
		String examined = some(more[7]);
		return new ClinicianWord(ClinicianWord.By.valueOf(some(more[4])),
				(examinedOn == null) ? null : LocalDate.parse(examinedOn), Boolean.parseBoolean(more[6]),
				examined.isEmpty() ? List.of() : Arrays.stream(examined.split(" ")).map(EventRows::symptom).toList());
	}

	private static ReportedSymptom symptom(String text) {
		String[] parts = text.split(":");
		return ReportedSymptom.of(Symptom.valueOf(parts[0]), Severity.valueOf(parts[1]));
	}

	private static @Nullable Spoken spoken(@Nullable String[] more) {
		return (more[4] == null) ? null : new Spoken(Spoken.By.valueOf(some(more[4])), some(more[1]));
	}

	private static String some(@Nullable String text) {
		return Objects.requireNonNull(text);
	}

}
