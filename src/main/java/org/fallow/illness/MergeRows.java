package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Columns;
import org.fallow.entry.Recorded;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The rows of merges, of their ends, and of the days they decided anew. The database
 * shows a merge to its athletes and to the coaches who cover them.
 */
@Component
class MergeRows {

	private static final String SELECT = """
			select m.*, coalesce(k.name, '') as kept_name, coalesce(o.name, '') as other_name,
				coalesce(b.name, '') as by_name, u.undone_at
			from person_merge m left join person_merge_undone u on u.merge_id = m.id
				left join person k on k.id = m.kept_id left join person o on o.id = m.other_id
				left join person b on b.id = m.actor_id\s""";

	private final JdbcClient jdbc;

	MergeRows(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	Optional<PersonMerge> find(UUID id) {
		return this.jdbc.sql(SELECT + "where m.id = ?").param(id).query(MergeRows::merge).optional();
	}

	/** All that the present person may read of, newest first. */
	List<PersonMerge> all() {
		return this.jdbc.sql(SELECT + "order by m.merged_at desc, m.id desc").query(MergeRows::merge).list();
	}

	/** The standing merge that made an entry part of another. */
	Optional<PersonMerge> partOf(PersonId other) {
		return this.jdbc.sql(SELECT + "where m.other_id = ? and u.merge_id is null")
			.param(other.value())
			.query(MergeRows::merge)
			.optional();
	}

	/** The latest standing merge into an entry. */
	Optional<PersonMerge> latestInto(PersonId kept) {
		return this.jdbc
			.sql(SELECT + "where m.kept_id = ? and u.merge_id is null order by m.merged_at desc, m.id desc limit 1")
			.param(kept.value())
			.query(MergeRows::merge)
			.optional();
	}

	/** Merges, and ends of merges, of a person who has not read of them yet. */
	List<PersonMerge> unread(PersonId person) {
		return this.jdbc.sql(SELECT + """
				where ? in (m.kept_id, m.other_id) and not exists (select 1 from person_merge_read r
					where r.merge_id = m.id and r.undone = (u.merge_id is not null) and r.person_id = ?)
				order by m.merged_at, m.id""").params(person.value(), person.value()).query(MergeRows::merge).list();
	}

	void read(PersonMerge merge, PersonId person, Instant at) {
		this.jdbc.sql("""
				insert into person_merge_read (merge_id, undone, person_id, read_at) values (?, ?, ?, ?)
				on conflict do nothing""").params(merge.id(), !merge.stands(), person.value(), utc(at)).update();
	}

	void insert(UUID id, PersonId kept, PersonId other, PersonId actor, Recorded recorded, String reason) {
		this.jdbc.sql("""
				insert into person_merge (id, kept_id, other_id, actor_id, merged_at, merged_on, reason)
				values (?, ?, ?, ?, ?, ?, ?)""")
			.params(id, kept.value(), other.value(), actor.value(), utc(recorded.at()), recorded.on(), reason)
			.update();
		this.jdbc.sql("select 1 from (select fallow_leave_by_merge(?)) done").param(id).query(Integer.class).single();
	}

	void undo(UUID id, PersonId actor, Recorded recorded) {
		this.jdbc.sql("""
				insert into person_merge_undone (merge_id, actor_id, undone_at, undone_on)
				values (?, ?, ?, ?)""").params(id, actor.value(), utc(recorded.at()), recorded.on()).update();
		this.jdbc.sql("select 1 from (select fallow_return_by_undo(?)) done").param(id).query(Integer.class).single();
	}

	boolean mayReturn(PersonMerge merge) {
		return this.jdbc.sql("select fallow_covers_fully(?, ?)")
			.params(merge.other().value(), utc(merge.at()))
			.query(Boolean.class)
			.single();
	}

	/** Keeps the days of an entry, from one on, as they are decided. */
	void keepDays(UUID id, boolean undone, PersonId athlete, LocalDate from) {
		this.jdbc
			.sql("""
					insert into replaced_day (merge_id, undone, athlete_id, day, clearance, stage, holding, reasons, rule_hash)
					select ?, ?, a.athlete_id, a.day, a.clearance, a.stage, a.holding, a.reasons, a.rule_hash
					from assessment a where a.athlete_id = ? and a.day >= ?""")
			.params(id, undone, athlete.value(), from)
			.update();
	}

	/** Removes the days before an entry's own first fact; absent for all days. */
	void removeDays(PersonId athlete, @Nullable LocalDate before) {
		if (before == null) {
			this.jdbc.sql("update athlete_status set latest_day = null, last_entry = null where athlete_id = ?")
				.param(athlete.value())
				.update();
		}
		LocalDate end = (before == null) ? LocalDate.of(9999, 12, 31) : before;
		this.jdbc.sql("delete from stage_decision where athlete_id = ? and day < ?")
			.params(athlete.value(), end)
			.update();
		this.jdbc.sql("delete from assessment where athlete_id = ? and day < ?").params(athlete.value(), end).update();
	}

	/** Days that were decided otherwise before a merge, or its end, newest first. */
	List<ReplacedDay> replaced(UUID id, int most) {
		return this.jdbc.sql("""
				select r.athlete_id, r.day, r.undone, r.clearance, r.stage, a.clearance as now_clearance,
					a.stage as now_stage
				from replaced_day r join person_merge m on m.id = r.merge_id
				left join assessment a on a.athlete_id = m.kept_id and a.day = r.day
				where r.merge_id = ? and (a.clearance is distinct from r.clearance or a.stage is distinct from r.stage)
				order by r.day desc, r.undone, r.athlete_id limit ?""")
			.params(id, most)
			.query((row, number) -> new ReplacedDay(new PersonId(row.getObject("athlete_id", UUID.class)),
					Columns.day(row, "day"), row.getBoolean("undone"), Clearance.valueOf(row.getString("clearance")),
					Columns.integer(row, "stage"), Columns.nullable(row, "now_clearance", Clearance.class),
					Columns.integer(row, "now_stage")))
			.list();
	}

	/** First and last morning of an entry by itself, and how many days have one. */
	EnteredMornings mornings(PersonId entry) {
		return this.jdbc.sql("""
				select min(day) as first_day, max(day) as last_day, count(distinct day) as days
				from morning_entry where athlete_id = ?""")
			.param(entry.value())
			.query((row, number) -> new EnteredMornings(Columns.dayOrNull(row, "first_day"),
					Columns.dayOrNull(row, "last_day"), row.getInt("days")))
			.single();
	}

	private static PersonMerge merge(ResultSet row, int number) throws SQLException {
		OffsetDateTime undone = row.getObject("undone_at", OffsetDateTime.class);
		return new PersonMerge(row.getObject("id", UUID.class), new PersonId(row.getObject("kept_id", UUID.class)),
				row.getString("kept_name"), new PersonId(row.getObject("other_id", UUID.class)),
				row.getString("other_name"), row.getString("by_name"),
				row.getObject("merged_at", OffsetDateTime.class).toInstant(), Columns.day(row, "merged_on"),
				row.getString("reason"), (undone == null) ? null : undone.toInstant());
	}

	private static OffsetDateTime utc(Instant at) {
		return at.atOffset(ZoneOffset.UTC);
	}

}
