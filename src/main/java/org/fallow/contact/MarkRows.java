package org.fallow.contact;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.contact.core.Mark;
import org.fallow.contact.core.MarkState;
import org.fallow.contact.core.Matter;
import org.fallow.contact.core.MatterKey;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of marks; who may see which, the database's policies say. */
@Component
class MarkRows {

	private static final String MARK = "select w.*, coalesce(p.name, '') as coach from contact_mark w "
			+ "left join person p on p.id = w.actor_id ";

	private final JdbcClient jdbc;

	MarkRows(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/** The last mark of each matter, by matter. */
	Map<MatterKey, Mark> last(Collection<PersonId> athletes) {
		Map<MatterKey, Mark> marks = new LinkedHashMap<>();
		this.jdbc.sql(MARK + "where w.athlete_id = any (?) order by w.recorded_at, w.id")
			.param(athletes.stream().map(PersonId::value).toArray(UUID[]::new))
			.query(MarkRows::mark)
			.list()
			.forEach((mark) -> marks.put(mark.key(), mark));
		return marks;
	}

	/** All marks of an athlete, newest first. */
	List<Mark> all(PersonId athlete) {
		return this.jdbc
			.sql(MARK + "where w.athlete_id = any (fallow_entries(?)) order by w.recorded_at desc, w.id desc")
			.param(athlete.value())
			.query(MarkRows::mark)
			.list();
	}

	/** Those with a shared note since an instant, newest first. */
	List<Mark> shared(PersonId athlete, Instant from) {
		return this.jdbc
			.sql(MARK + "where w.athlete_id = any (fallow_entries(?)) and w.shared and w.recorded_at >= ? "
					+ "order by w.recorded_at desc, w.id desc")
			.params(athlete.value(), from.atOffset(ZoneOffset.UTC))
			.query(MarkRows::mark)
			.list();
	}

	private static Mark mark(ResultSet row, int number) throws SQLException {
		MatterKey key = new MatterKey(new PersonId(row.getObject("athlete_id", UUID.class)),
				Matter.valueOf(row.getString("matter")), row.getObject("arose_on", LocalDate.class));
		return new Mark(key, MarkState.valueOf(row.getString("state")), row.getString("note"), row.getBoolean("shared"),
				row.getObject("recorded_at", OffsetDateTime.class).toInstant(), row.getString("coach"));
	}

}
