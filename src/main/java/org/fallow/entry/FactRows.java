package org.fallow.entry;

import java.sql.ResultSet;
import java.sql.SQLException;

import org.fallow.rules.Intensity;

/**
 * All facts but mornings in one statement: what each kind keeps is laid into the same
 * columns, so that a fold asks once instead of once for each kind. Whoever has rows to
 * add to them, such as what people decided, lays them out alike and numbers their kind
 * from {@link #OWN} on.
 */
public final class FactRows {

	/** First number for kinds of another module. */
	public static final int OWN = 10;

	/** The kind that is no fact of its own but part of a morning. */
	static final int SYMPTOM = 6;

	/** The columns in their order. */
	public static final String COLUMNS = """
			kind, written, key, revision, day, until_day, recorded_at, recorded_on, code, detail, number, amount, truth,
			list, words\s""";

	/** Follows a union of all; rows of one kind come in the order they were stored. */
	public static final String ORDER = " order by kind, written, key, revision, number";

	/**
	 * Parameters {@code athlete} and {@code from}: sessions only those of which any log
	 * has a day from then on, symptoms of mornings from then on, everything else whenever
	 * it was; those of all entries of the athlete as {@link SeveralEntries} numbers them.
	 * The keys are looked up in one array, so that the logs of years before are not read
	 * to be joined away. A symptom's number is its place in its morning.
	 */
	public static final String SELECT = """
			select 1 as kind, null::timestamptz as written, %KEY% as key, %REVISION% as revision, day,
				null::date as until_day, recorded_at, recorded_on, activity as code, intensity as detail,
				minutes as number, rpe as amount, removed as truth, after_session as list, note as words
			from session_log where athlete_id = %IDS%
				and key = any (array(select key from session_log where athlete_id = %IDS% and day >= :from))
			union all
			select 2, null, %KEY%, %REVISION%, day, until_day, recorded_at, recorded_on, kind, null, null, null, null,
				null, note
			from absence where athlete_id = %IDS%
			union all
			select 3, recorded_at, key, %REVISION%, day, null, recorded_at, recorded_on, null, null, null, null, begun,
				null, null
			from medicine_change where athlete_id = %IDS%
			union all
			select 4, recorded_at, key, %REVISION%, day, until_day, recorded_at, recorded_on, symptom, severity, null,
				null, null, array[cause], word
			from known_symptom where athlete_id = %IDS%
			union all
			select 5, recorded_at, key, %REVISION%, day, null, recorded_at, recorded_on, kind, null, null, null, present,
				null, null
			from health_condition where athlete_id = %IDS%
			union all
			select 6, null, day::text, %REVISION%, day, null, null, null, symptom, severity, position, null, null, null,
				words
			from morning_symptom where athlete_id = %IDS% and day >= :from
			union all
			select 7, recorded_at, key, %REVISION%, day, null, recorded_at, recorded_on, null, null, null, null, null,
				null, null
			from vaccination where athlete_id = %IDS%
			union all
			select 8, recorded_at, key, %REVISION%, day, null, recorded_at, recorded_on, what, method, null, null, null,
				null, null
			from device_change where athlete_id = %IDS%
			union all
			select 9, recorded_at, key, %REVISION%, day, null, recorded_at, recorded_on, kind, method, null, rhr_bpm, null,
				array[posture], null
			from measured_again where athlete_id = %IDS%\s"""
		.replace("%KEY%", SeveralEntries.KEY)
		.replace("%REVISION%", SeveralEntries.REVISION)
		.replace("%IDS%", SeveralEntries.IDS);

	private FactRows() {
	}

	/**
	 * Reads a fact of this module.
	 * @param row a row of {@link #SELECT} that is no symptom: those are taken in by
	 * {@link FeltSymptoms#add}
	 * @return the fact
	 * @throws SQLException from the driver
	 */
	public static Fact read(ResultSet row) throws SQLException {
		return switch (row.getInt("kind")) {
			case 1 -> session(row);
			case 2 -> new Absence(row.getString("key"), Columns.day(row, "day"), Columns.dayOrNull(row, "until_day"),
					Columns.recorded(row), AbsenceKind.valueOf(row.getString("code")), row.getString("words"));
			case 3 -> new MedicineChange(Columns.day(row, "day"), Columns.recorded(row), row.getBoolean("truth"));
			case 4 -> new KnownSymptom(Columns.day(row, "day"), Columns.day(row, "until_day"), Columns.recorded(row),
					Symptom.valueOf(row.getString("code")), Severity.valueOf(row.getString("detail")),
					Columns.list(row, "list", KnownCause.class).get(0), row.getString("words"));
			case 5 -> new HealthCondition(Columns.day(row, "day"), Columns.recorded(row),
					HealthCondition.Kind.valueOf(row.getString("code")), row.getBoolean("truth"));
			case 7 -> new Vaccination(Columns.day(row, "day"), Columns.recorded(row));
			case 8 -> new DeviceChange(Columns.day(row, "day"), Columns.recorded(row),
					DeviceChange.What.valueOf(row.getString("code")), Columns.nullable(row, "detail", Method.class));
			case 9 -> new MeasuredAgain(Columns.day(row, "day"), Columns.recorded(row),
					MeasuredAgain.Kind.valueOf(row.getString("code")), Method.valueOf(row.getString("detail")),
					Columns.list(row, "list", Posture.class).get(0), row.getDouble("amount"));
			default -> throw new IllegalArgumentException("no fact of kind " + row.getInt("kind"));
		};
	}

	private static SessionLog session(ResultSet row) throws SQLException {
		return new SessionLog(row.getString("key"), Columns.day(row, "day"), Columns.recorded(row),
				Activity.valueOf(row.getString("code")), Columns.integer(row, "number"), Columns.number(row, "amount"),
				Columns.nullable(row, "detail", Intensity.class), Columns.list(row, "list", AfterSession.class),
				row.getBoolean("truth"), row.getString("words"));
	}

}
