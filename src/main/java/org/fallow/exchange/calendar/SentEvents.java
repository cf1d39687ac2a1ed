package org.fallow.exchange.calendar;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What was sent of an athlete's calendar, to tell what has changed since. Every call
 * needs a transaction of the athlete.
 */
@Component
class SentEvents {

	/** An event is remembered so long after its day, should it be put off. */
	private static final int DAYS_KEPT = 60;

	private final JdbcClient jdbc;

	SentEvents(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/** Lets one at a time send an athlete's calendar, or a change would count twice. */
	void lock(PersonId athlete) {
		this.jdbc.sql("select true from calendar_feed where person_id = ? for update")
			.param(athlete.value())
			.query(Boolean.class)
			.optional();
	}

	/**
	 * Notes what is sent now: the events of the programme, and those from today on that
	 * were in it.
	 */
	List<SentEvent> send(PersonId athlete, List<CalendarEvent> events, LocalDate today, Instant now) {
		forget(athlete, today);
		Map<String, Row> gone = known(athlete);
		List<SentEvent> sent = new ArrayList<>();
		for (CalendarEvent event : events) {
			sent.add(sent(athlete, event, gone.remove(event.uid()), now));
		}
		for (Row row : gone.values()) {
			if (!row.sent().event().day().isBefore(today)) {
				sent.add(row.sent().cancelled() ? row.sent() : cancelled(athlete, row, now));
			}
		}
		return sent;
	}

	private SentEvent sent(PersonId athlete, CalendarEvent event, @Nullable Row before, Instant now) {
		if (before == null) {
			return store(athlete, new SentEvent(event, 0, false, now), event.hash());
		}
		SentEvent then = before.sent();
		return (before.hash().equals(event.hash()) && !then.cancelled())
				? new SentEvent(event, then.sequence(), false, then.changedAt())
				: store(athlete, new SentEvent(event, then.sequence() + 1, false, now), event.hash());
	}

	private SentEvent cancelled(PersonId athlete, Row row, Instant now) {
		return store(athlete, new SentEvent(row.sent().event(), row.sent().sequence() + 1, true, now), row.hash());
	}

	private SentEvent store(PersonId athlete, SentEvent sent, String hash) {
		CalendarEvent event = sent.event();
		this.jdbc
			.sql("""
					insert into calendar_event (athlete_id, uid, sequence, cancelled, content_hash, changed_at, day, at_time,
						minutes, summary, place) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
					on conflict (athlete_id, uid) do update set sequence = excluded.sequence,
						cancelled = excluded.cancelled, content_hash = excluded.content_hash,
						changed_at = excluded.changed_at, day = excluded.day, at_time = excluded.at_time,
						minutes = excluded.minutes, summary = excluded.summary, place = excluded.place""")
			.params(athlete.value(), event.uid(), sent.sequence(), sent.cancelled(), hash,
					sent.changedAt().atOffset(ZoneOffset.UTC), event.day())
			.param(event.time())
			.params(event.minutes(), event.summary(), event.place())
			.update();
		return sent;
	}

	private void forget(PersonId athlete, LocalDate today) {
		this.jdbc.sql("delete from calendar_event where athlete_id = ? and day < ?")
			.params(athlete.value(), today.minusDays(DAYS_KEPT))
			.update();
	}

	private Map<String, Row> known(PersonId athlete) {
		Map<String, Row> known = new LinkedHashMap<>();
		this.jdbc.sql("select * from calendar_event where athlete_id = ? order by day, uid")
			.param(athlete.value())
			.query(SentEvents::row)
			.list()
			.forEach((row) -> known.put(row.sent().event().uid(), row));
		return known;
	}

	private static Row row(ResultSet row, int number) throws SQLException {
		CalendarEvent event = new CalendarEvent(row.getString("uid"), row.getObject("day", LocalDate.class),
				row.getObject("at_time", LocalTime.class), row.getInt("minutes"), row.getString("summary"), "",
				row.getString("place"));
		return new Row(new SentEvent(event, row.getInt("sequence"), row.getBoolean("cancelled"),
				row.getObject("changed_at", OffsetDateTime.class).toInstant()), row.getString("content_hash"));
	}

	/** An event without its description, and the hash of all of it. */
	private record Row(SentEvent sent, String hash) {
	}

}
