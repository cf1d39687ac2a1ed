package org.fallow.entry;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Map;
import java.util.Optional;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Squad;
import org.jspecify.annotations.Nullable;

import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * What storing any fact other than a morning has in common: lock the athlete, store the
 * same sending once, number the facts of a key, tell that the timeline changed.
 */
@Component
@Transactional(propagation = Propagation.MANDATORY)
public class SmallFacts {

	private static final String COMMON = "athlete_id, day, key, revision, zone_id, recorded_at, recorded_on, "
			+ "written_at, actor_id, role, source, request_id) values (";

	private static final int COMMON_COLUMNS = 12;

	private static final Map<String, TraceSubject> TRACED = Map.of(Sessions.TABLE, TraceSubject.SESSION, Absences.TABLE,
			TraceSubject.ABSENCE, Medicines.TABLE, TraceSubject.MEDICINE, KnownSymptoms.TABLE,
			TraceSubject.KNOWN_SYMPTOM, HealthConditions.TABLE, TraceSubject.CONDITION, NotedChanges.VACCINATION,
			TraceSubject.VACCINATION, NotedChanges.DEVICE_CHANGE, TraceSubject.DEVICE, Measurements.TABLE,
			TraceSubject.MORNING);

	private final JdbcClient client;

	private final JdbcTemplate template;

	private final Squad squad;

	private final Recording recording;

	private final AthleteLock lock;

	private final AthleteAccess access;

	private final ApplicationEventPublisher events;

	SmallFacts(JdbcClient client, JdbcTemplate template, Squad squad, Recording recording, AthleteLock lock,
			AthleteAccess access, ApplicationEventPublisher events) {
		this.client = client;
		this.template = template;
		this.squad = squad;
		this.recording = recording;
		this.lock = lock;
		this.access = access;
		this.events = events;
	}

	/**
	 * Locks the athlete for a fact to be added.
	 * @param id whose
	 * @return the athlete
	 */
	public Athlete begin(PersonId id) {
		this.lock.lock(id);
		return this.squad.athlete(id);
	}

	/**
	 * The fact this very sending stored before.
	 * @param table the facts' table
	 * @param athlete whose
	 * @param submission the sending
	 * @return what it stored; empty if it is new
	 */
	public Optional<Saved> before(String table, PersonId athlete, Submission submission) {
		return this.client.sql("select key, revision from " + table + " where athlete_id = ? and request_id = ?")
			.params(athlete.value(), submission.requestId())
			.query((row, n) -> (Saved) new Saved.Stored(row.getString("key"), row.getInt("revision"), true))
			.optional();
	}

	/**
	 * When the fact counts as known.
	 * @param athlete whose
	 * @param day the day it speaks of
	 * @param claimed the day a file says it became known; absent for the day itself
	 * @param submission the sending
	 * @param historyTime local time of history
	 * @return instant and civil day
	 */
	public Recorded recorded(Athlete athlete, LocalDate day, @Nullable LocalDate claimed, Submission submission,
			LocalTime historyTime) {
		return this.recording.recorded(athlete, day, claimed, submission.source(), historyTime);
	}

	/**
	 * The athlete's today.
	 * @param athlete whose
	 * @return the civil day
	 */
	public LocalDate today(Athlete athlete) {
		return this.recording.today(athlete);
	}

	/**
	 * Adds a fact.
	 * @param table the facts' table
	 * @param athlete whose, locked by {@link #begin}
	 * @param key the fact it corrects; absent for a new one
	 * @param fact day and recording
	 * @param submission the sending
	 * @param columns names of the fact's own columns, separated by commas; empty if it
	 * has none
	 * @param values their values
	 * @return what is stored
	 */
	public Saved add(String table, Athlete athlete, @Nullable String key, Fact fact, Submission submission,
			String columns, @Nullable Object... values) {
		String named = (key != null) ? key : submission.requestId().toString();
		int revision = revision(table, athlete.id(), named) + 1;
		@Nullable Object[] all = new Object[values.length + COMMON_COLUMNS];
		@Nullable Object[] common = { athlete.id().value(), fact.day(), named, revision, athlete.zone().getId(),
				fact.recorded().at(), fact.recorded().on(), this.recording.now(), submission.actor().value(),
				submission.role(), submission.source(), submission.requestId() };
		System.arraycopy(values, 0, all, 0, values.length);
		System.arraycopy(common, 0, all, values.length, COMMON_COLUMNS);
		String places = "?, ".repeat(all.length - 1) + "?)";
		String own = columns.isEmpty() ? "" : columns + ", ";
		this.template.update("insert into " + table + " (" + own + COMMON + places, Columns.of(all));
		this.access.changed(athlete, TRACED.getOrDefault(table, TraceSubject.ILLNESS));
		this.events.publishEvent(new TimelineChanged(athlete, fact.recorded().on()));
		return new Saved.Stored(named, revision, false);
	}

	/**
	 * Whether a key is one of the athlete's, or of another entry of the same person's as
	 * {@link SeveralEntries#KEY} reads it.
	 * @param table the facts' table
	 * @param athlete whose
	 * @param key the key
	 * @return true if there is a fact of it
	 */
	public boolean has(String table, PersonId athlete, String key) {
		return this.client
			.sql("select exists (select 1 from " + table + " where athlete_id = " + SeveralEntries.IDS + " and "
					+ SeveralEntries.KEY + " = :key)")
			.param("athlete", athlete.value())
			.param("key", key)
			.query(Boolean.class)
			.single();
	}

	private int revision(String table, PersonId athlete, String key) {
		return this.client.sql("select coalesce(max(revision), 0) from " + table + " where athlete_id = ? and key = ?")
			.params(athlete.value(), key)
			.query(Integer.class)
			.single();
	}

}
