package org.fallow.entry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.team.Role;

import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The rows of morning entries and their symptoms.
 */
@Component
class MorningRows {

	private static final String SELECT = """
			select e.*, array(select s.symptom from morning_symptom s where s.athlete_id = e.athlete_id
					and s.day = e.day and s.revision = e.revision order by s.position) as symptoms,
				array(select s.severity from morning_symptom s where s.athlete_id = e.athlete_id
					and s.day = e.day and s.revision = e.revision order by s.position) as severities,
				array(select s.words from morning_symptom s where s.athlete_id = e.athlete_id
					and s.day = e.day and s.revision = e.revision order by s.position) as words
			from morning_entry e where e.athlete_id = ?\s""";

	private static final String INSERT = """
			insert into morning_entry (athlete_id, day, revision, method, posture, rhr_bpm, rmssd_ms, rr_ms, unsure,
				temperature_c, fever_last_24h, fever_medicine, eating_normally, feels, soreness, tags, note, zone_id,
				recorded_at, recorded_on, written_at, actor_id, role, source, request_id)
			values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""";

	private final JdbcClient client;

	private final JdbcTemplate template;

	MorningRows(JdbcClient client, JdbcTemplate template) {
		this.client = client;
		this.template = template;
	}

	Optional<StoredMorning> ofRequest(PersonId athlete, UUID requestId) {
		return this.client.sql(SELECT + "and e.request_id = ?")
			.params(athlete.value(), requestId)
			.query(MorningRows::read)
			.optional();
	}

	Optional<StoredMorning> latest(PersonId athlete, LocalDate day) {
		return this.client.sql(SELECT + "and e.day = ? order by e.revision desc limit 1")
			.params(athlete.value(), day)
			.query(MorningRows::read)
			.optional();
	}

	List<StoredMorning> of(PersonId athlete, LocalDate from, LocalDate to) {
		return this.client.sql(SELECT + "and e.day between ? and ? order by e.day, e.revision")
			.params(athlete.value(), from, to)
			.query(MorningRows::read)
			.list();
	}

	List<StoredMorning> since(PersonId athlete, LocalDate from) {
		return this.client.sql(SELECT + "and e.day >= ? order by e.day, e.revision")
			.params(athlete.value(), from)
			.query(MorningRows::read)
			.list();
	}

	Optional<LocalDate> lastDay(PersonId athlete) {
		return this.client.sql("select day from morning_entry where athlete_id = ? order by day desc limit 1")
			.param(athlete.value())
			.query(LocalDate.class)
			.optional();
	}

	void insert(Athlete athlete, List<StoredMorning> mornings, Role role, Instant writtenAt) {
		List<Object[]> entries = new ArrayList<>();
		List<Object[]> symptoms = new ArrayList<>();
		for (StoredMorning morning : mornings) {
			entries.add(row(athlete, morning, role, writtenAt));
			symptoms.addAll(symptomRows(athlete, morning));
		}
		this.template.batchUpdate(INSERT, entries);
		this.template.batchUpdate("""
				insert into morning_symptom (athlete_id, day, revision, position, symptom, severity, words)
				values (?, ?, ?, ?, ?, ?, ?)""", symptoms);
	}

	private static Object[] row(Athlete athlete, StoredMorning morning, Role role, Instant writtenAt) {
		MorningEntry e = morning.entry();
		return Columns.of(athlete.id().value(), e.day(), morning.revision(), e.method(), e.posture(), e.rhrBpm(),
				e.rmssdMs(), Columns.array("integer", morning.rrMs()), e.unsure(), e.temperatureC(), e.feverLast24h(),
				e.feverMedicine(), e.eatingNormally(), e.feels(), e.soreness(), Columns.array("text", e.tags()),
				e.note(), athlete.zone().getId(), e.recorded().at(), e.recorded().on(), writtenAt,
				morning.actor().value(), role, morning.source(), morning.requestId());
	}

	private static List<Object[]> symptomRows(Athlete athlete, StoredMorning morning) {
		List<Object[]> rows = new ArrayList<>();
		for (ReportedSymptom reported : morning.entry().symptoms()) {
			rows.add(Columns.of(athlete.id().value(), morning.day(), morning.revision(), rows.size(),
					reported.symptom(), reported.severity(), reported.text()));
		}
		return rows;
	}

	private static StoredMorning read(ResultSet row, int number) throws SQLException {
		MorningEntry entry = new MorningEntry(Columns.day(row, "day"), Columns.recorded(row),
				Columns.nullable(row, "method", Method.class), Columns.nullable(row, "posture", Posture.class),
				Columns.number(row, "rhr_bpm"), Columns.number(row, "rmssd_ms"), row.getBoolean("unsure"),
				Columns.number(row, "temperature_c"), symptoms(row), row.getBoolean("fever_last_24h"),
				FeverMedicine.valueOf(row.getString("fever_medicine")), Columns.truth(row, "eating_normally"),
				Columns.nullable(row, "feels", Feels.class), Columns.nullable(row, "soreness", Severity.class),
				Columns.list(row, "tags", ContextTag.class), row.getString("note"));
		return new StoredMorning(entry, row.getInt("revision"), List.of((Integer[]) row.getArray("rr_ms").getArray()),
				new PersonId(row.getObject("actor_id", UUID.class)), Source.valueOf(row.getString("source")),
				row.getObject("request_id", UUID.class));
	}

	private static List<ReportedSymptom> symptoms(ResultSet row) throws SQLException {
		List<Symptom> symptoms = Columns.list(row, "symptoms", Symptom.class);
		List<Severity> severities = Columns.list(row, "severities", Severity.class);
		String[] words = (String[]) row.getArray("words").getArray();
		List<ReportedSymptom> reported = new ArrayList<>();
		for (int i = 0; i < symptoms.size(); i++) {
			reported.add(new ReportedSymptom(symptoms.get(i), severities.get(i), words[i]));
		}
		return reported;
	}

}
