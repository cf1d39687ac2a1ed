package org.fallow.entry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.PersonId;
import org.fallow.entry.ManyRows.Column;
import org.fallow.entry.ManyRows.Type;
import org.fallow.team.Athlete;
import org.fallow.team.Role;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.ResultSetExtractor;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The rows of morning entries and their symptoms.
 */
@Component
class MorningRows {

	/** A row for each symptom, and one for an entry without any. */
	private static final String SELECT = """
			select e.*, s.position, s.symptom, s.severity, s.words from morning_entry e left join morning_symptom s
				on s.athlete_id = e.athlete_id and s.day = e.day and s.revision = e.revision\s""";

	/** What the fold looks at, apart from the symptoms. */
	private static final String SELECT_SINCE = """
			select m.* from unnest(fallow_entries(:athlete)) as entry (id) cross join lateral
				(select day, %REVISION% as revision, recorded_at, recorded_on, method, posture, rhr_bpm, rmssd_ms,
					unsure, temperature_c, fever_last_24h, fever_medicine, eating_normally, feels, soreness, tags, note,
						ill_meanwhile, ill_since
				from morning_entry where athlete_id = entry.id and day >= :from order by day, morning_entry.revision) m
			order by day, revision""".replace("%REVISION%",
			SeveralEntries.REVISION.replace("revision", "morning_entry.revision"));

	private static final String COLUMNS = """
			insert into morning_entry (athlete_id, day, revision, method, posture, rhr_bpm, rmssd_ms, rr_ms, unsure,
				temperature_c, fever_last_24h, fever_medicine, eating_normally, feels, soreness, tags, note, ill_meanwhile,
				ill_since, zone_id, recorded_at, recorded_on, written_at, actor_id, role, source, request_id)\s""";

	private static final String PLACES = "?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
			+ "?, ?";

	private static final ManyRows MANY = new ManyRows("morning_entry",
			Stream.of(Column.same(Type.ID, "athlete_id"), Column.of(Type.DAY, "day"),
					Column.of(Type.INTEGER, "revision"), Column.of(Type.TEXT, "method posture"),
					Column.of(Type.NUMBER, "rhr_bpm rmssd_ms"), Column.of(Type.INTEGERS, "rr_ms"),
					Column.of(Type.TRUTH, "unsure"), Column.of(Type.NUMBER, "temperature_c"),
					Column.of(Type.TRUTH, "fever_last_24h"), Column.of(Type.TEXT, "fever_medicine"),
					Column.of(Type.TRUTH, "eating_normally"), Column.of(Type.TEXT, "feels soreness"),
					Column.of(Type.NAMES, "tags"), Column.of(Type.TEXT, "note"), Column.of(Type.TRUTH, "ill_meanwhile"),
					Column.of(Type.DAY, "ill_since"), Column.same(Type.TEXT, "zone_id"),
					Column.of(Type.INSTANT, "recorded_at"), Column.of(Type.DAY, "recorded_on"),
					Column.same(Type.INSTANT, "written_at"), Column.same(Type.ID, "actor_id"),
					Column.same(Type.TEXT, "role"), Column.same(Type.TEXT, "source"), Column.of(Type.ID, "request_id"))
				.flatMap(List::stream)
				.toList(),
			"");

	private static final ManyRows MANY_SYMPTOMS = new ManyRows("morning_symptom",
			Stream
				.of(Column.same(Type.ID, "athlete_id"), Column.of(Type.DAY, "day"),
						Column.of(Type.INTEGER, "revision position"), Column.of(Type.TEXT, "symptom severity words"))
				.flatMap(List::stream)
				.toList(),
			"");

	/**
	 * Only as the next revision of its day, and only if this sending stored nothing yet.
	 */
	private static final String INSERT_NEXT = COLUMNS + "select " + PLACES + " " + """
			where not exists (select 1 from morning_entry where athlete_id = ? and request_id = ?)
				and coalesce((select revision from morning_entry where athlete_id = ? and day = ?
					order by revision desc limit 1), 0) = ?""";

	private static final String INSERT_NEXT_WITH_SYMPTOMS = "with entry as (" + INSERT_NEXT + " " + """
			returning athlete_id, day, revision)
			insert into morning_symptom (athlete_id, day, revision, position, symptom, severity, words)
			select e.athlete_id, e.day, e.revision, s.place - 1, s.symptom, s.severity, s.words
			from entry e, unnest(?, ?, ?) with ordinality as s (symptom, severity, words, place)""";

	/** Mornings looked back over for an answer. */
	private static final int MOST_ANSWERED = 400;

	private final JdbcClient client;

	private final JdbcTemplate template;

	MorningRows(JdbcClient client, JdbcTemplate template) {
		this.client = client;
		this.template = template;
	}

	/**
	 * Tells the database that the transaction works on many rows of one athlete, so that
	 * its policies need not ask for each whether the person covers that athlete.
	 */
	void about(PersonId athlete) {
		this.client.sql("select set_config('fallow.athlete', ?, true)")
			.param(athlete.toString())
			.query(String.class)
			.single();
	}

	Optional<StoredMorning> ofRequest(PersonId athlete, UUID requestId) {
		return query("where e.athlete_id = ? and e.request_id = ? order by s.position", athlete.value(), requestId)
			.stream()
			.findFirst();
	}

	Optional<StoredMorning> latest(PersonId athlete, LocalDate day) {
		return query("""
				where e.athlete_id = ? and e.day = ? and e.revision = (select max(revision) from morning_entry
					where athlete_id = ? and day = ?) order by s.position""", athlete.value(), day, athlete.value(),
				day)
			.stream()
			.findFirst();
	}

	/** Those of all entries of the person, by day; of one instant in the order stored. */
	List<StoredMorning> ofAll(PersonId athlete, LocalDate from, LocalDate to) {
		List<Integer> entries = new ArrayList<>();
		List<StoredMorning> found = new ArrayList<>();
		List<UUID> all = this.client.sql("select unnest(fallow_entries(?))")
			.param(athlete.value())
			.query(UUID.class)
			.list();
		for (UUID entry : all) {
			found.addAll(of(new PersonId(entry), from, to));
			while (entries.size() < found.size()) {
				entries.add(all.indexOf(entry));
			}
		}
		return SeveralEntries.stored(found, entries);
	}

	List<StoredMorning> of(PersonId athlete, LocalDate from, LocalDate to) {
		return query("where e.athlete_id = ? and e.day between ? and ? order by e.day, e.revision, s.position",
				athlete.value(), from, to);
	}

	/** What the fold looks at of the mornings from a day on, by day and revision. */
	List<RevisedMorning> since(PersonId athlete, LocalDate from) {
		return this.client.sql(SELECT_SINCE)
			.param("athlete", athlete.value())
			.param("from", from)
			.query((row, number) -> new RevisedMorning(entry(row), row.getInt("revision")))
			.list();
	}

	private List<StoredMorning> query(String where, Object... params) {
		return this.client.sql(SELECT + where)
			.params(params)
			.query((ResultSetExtractor<List<StoredMorning>>) MorningRows::read);
	}

	/** Mornings up to a day, latest first, and whether any revision answered. */
	List<Answered> answered(PersonId athlete, LocalDate day) {
		return this.client.sql("""
				select day, bool_or(ill_meanwhile is not null) as answered from morning_entry
				where athlete_id = any (fallow_entries(?)) and day <= ? group by day order by day desc limit ?""")
			.params(athlete.value(), day, MOST_ANSWERED)
			.query((row, n) -> new Answered(Columns.day(row, "day"), row.getBoolean("answered")))
			.list();
	}

	Optional<LocalDate> lastDay(PersonId athlete) {
		return this.client.sql("""
				select m.day from unnest(fallow_entries(?)) as e (id) cross join lateral
					(select day from morning_entry where athlete_id = e.id order by day desc limit 1) m
				order by m.day desc limit 1""").param(athlete.value()).query(LocalDate.class).optional();
	}

	/**
	 * Stores a morning if it is the next revision of its day and its sending stored
	 * nothing yet. The caller holds the athlete's lock, so that this stays true.
	 * @return whether it was stored
	 */
	boolean insertNext(Athlete athlete, StoredMorning morning, Role role, Instant writtenAt) {
		List<@Nullable Object> values = new ArrayList<>(Arrays.asList(row(athlete, morning, role, writtenAt,
				Columns.array("integer", morning.rrMs()), Columns.array("text", morning.entry().tags()))));
		UUID id = athlete.id().value();
		values.addAll(List.of(id, morning.requestId(), id, morning.day(), morning.revision() - 1));
		List<ReportedSymptom> symptoms = morning.entry().symptoms();
		if (symptoms.isEmpty()) {
			return this.template.update(INSERT_NEXT, values.toArray()) > 0;
		}
		values.add(Columns.array("text", symptoms.stream().map(ReportedSymptom::symptom).toList()));
		values.add(Columns.array("text", symptoms.stream().map(ReportedSymptom::severity).toList()));
		values.add(Columns.array("text", Arrays.asList(symptoms.stream().map(ReportedSymptom::text).toArray())));
		return this.template.update(INSERT_NEXT_WITH_SYMPTOMS, values.toArray()) > 0;
	}

	void insert(Athlete athlete, List<StoredMorning> mornings, Role role, Instant writtenAt) {
		List<@Nullable Object[]> entries = new ArrayList<>();
		List<@Nullable Object[]> symptoms = new ArrayList<>();
		for (StoredMorning morning : mornings) {
			entries.add(row(athlete, morning, role, writtenAt, morning.rrMs(), morning.entry().tags()));
			symptoms.addAll(symptomRows(athlete, morning));
		}
		MANY.store(this.template, entries);
		MANY_SYMPTOMS.store(this.template, symptoms);
	}

	private static @Nullable Object[] row(Athlete athlete, StoredMorning morning, Role role, Instant writtenAt,
			Object rrMs, Object tags) {
		MorningEntry e = morning.entry();
		Meanwhile meanwhile = e.meanwhile();
		return Columns.of(athlete.id().value(), e.day(), morning.revision(), e.method(), e.posture(), e.rhrBpm(),
				e.rmssdMs(), rrMs, e.unsure(), e.temperatureC(), e.feverLast24h(), e.feverMedicine(),
				e.eatingNormally(), e.feels(), e.soreness(), tags, e.note(),
				(meanwhile == null) ? null : meanwhile.ill(), (meanwhile == null) ? null : meanwhile.since(),
				athlete.zone().getId(), e.recorded().at(), e.recorded().on(), writtenAt, morning.actor().value(), role,
				morning.source(), morning.requestId());
	}

	private static List<Object[]> symptomRows(Athlete athlete, StoredMorning morning) {
		List<Object[]> rows = new ArrayList<>();
		for (ReportedSymptom reported : morning.entry().symptoms()) {
			rows.add(Columns.of(athlete.id().value(), morning.day(), morning.revision(), rows.size(),
					reported.symptom(), reported.severity(), reported.text()));
		}
		return rows;
	}

	/** Entries of rows that differ in the symptom only, which follow one another. */
	private static List<StoredMorning> read(ResultSet row) throws SQLException {
		List<StoredMorning> found = new ArrayList<>();
		List<ReportedSymptom> felt = new ArrayList<>();
		while (row.next()) {
			String symptom = row.getString("symptom");
			if (symptom == null || row.getInt("position") == 0) {
				felt.clear();
				found.add(stored(row));
			}
			if (symptom != null) {
				felt.add(new ReportedSymptom(Symptom.valueOf(symptom), Severity.valueOf(row.getString("severity")),
						row.getString("words")));
				int last = found.size() - 1;
				found.set(last, with(found.get(last), felt));
			}
		}
		return found;
	}

	private static StoredMorning stored(ResultSet row) throws SQLException {
		return new StoredMorning(entry(row), row.getInt("revision"),
				List.of((Integer[]) row.getArray("rr_ms").getArray()),
				new PersonId(row.getObject("actor_id", UUID.class)), Source.valueOf(row.getString("source")),
				row.getObject("request_id", UUID.class));
	}

	private static MorningEntry entry(ResultSet row) throws SQLException {
		return new MorningEntry(Columns.day(row, "day"), Columns.recorded(row),
				Columns.nullable(row, "method", Method.class), Columns.nullable(row, "posture", Posture.class),
				Columns.number(row, "rhr_bpm"), Columns.number(row, "rmssd_ms"), row.getBoolean("unsure"),
				Columns.number(row, "temperature_c"), List.of(), row.getBoolean("fever_last_24h"),
				FeverMedicine.valueOf(row.getString("fever_medicine")), Columns.truth(row, "eating_normally"),
				Columns.nullable(row, "feels", Feels.class), Columns.nullable(row, "soreness", Severity.class),
				Columns.list(row, "tags", ContextTag.class), row.getString("note"), meanwhile(row));
	}

	private static @Nullable Meanwhile meanwhile(ResultSet row) throws SQLException {
		Boolean ill = Columns.truth(row, "ill_meanwhile");
		return (ill == null) ? null : new Meanwhile(ill, Columns.dayOrNull(row, "ill_since"));
	}

	/**
	 * A morning with an entry.
	 *
	 * @param day the morning
	 * @param answered whether it was answered about an illness meanwhile
	 */
	record Answered(LocalDate day, boolean answered) {
	}

	private static StoredMorning with(StoredMorning stored, List<ReportedSymptom> symptoms) {
		return new StoredMorning(stored.entry().with(symptoms), stored.revision(), stored.rrMs(), stored.actor(),
				stored.source(), stored.requestId());
	}

}
