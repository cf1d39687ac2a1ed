package org.fallow.training;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.team.ByGroupCoach;
import org.fallow.team.OfGroup;
import org.fallow.training.core.ProgrammeWeek;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The programmes of groups, week by week. A week is changed as a whole, upon the revision
 * that was looked at; who comes second is told, and nothing is overwritten.
 */
@Service
@Transactional
public class Programmes {

	private static final LocalDate FIRST = LocalDate.of(2000, 1, 3);

	private static final LocalDate END = LocalDate.of(2200, 1, 6);

	private static final String LATEST = """
			select w.*, (select name from person p where p.id = w.made_by) as by_name from programme_week w
			where w.group_id = :group and w.monday between :from and :to
				and w.revision = (select max(l.revision) from programme_week l
					where l.group_id = w.group_id and l.monday = w.monday)
			order by w.monday""";

	private final JdbcClient jdbc;

	private final Clock clock;

	Programmes(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The weeks of a group that hold any of some days.
	 * @param groupId whose programme
	 * @param from first day
	 * @param to last day, inclusive
	 * @return by Monday; weeks that nobody wrote are absent
	 */
	@OfGroup
	@Transactional(readOnly = true)
	public Map<LocalDate, ProgrammeWeek> weeks(UUID groupId, LocalDate from, LocalDate to) {
		Map<LocalDate, ProgrammeWeek> weeks = new TreeMap<>();
		latest(groupId, mondayOf(from), to).forEach((row) -> weeks.put(row.monday(), row.week()));
		return weeks;
	}

	/**
	 * One week as it stands.
	 * @param groupId whose programme
	 * @param day any day of it
	 * @return the week; empty of sessions and of revision 0 where nobody wrote it
	 */
	@OfGroup
	@Transactional(readOnly = true)
	public StoredWeek week(UUID groupId, LocalDate day) {
		LocalDate monday = mondayOf(day);
		return find(groupId, monday)
			.map((row) -> new StoredWeek(row.week(), row.revision(), row.contentOf() > 0, row.by(),
					row.at().toInstant()))
			.orElseGet(() -> new StoredWeek(empty(monday), 0, false, null, null));
	}

	/**
	 * Writes a week.
	 * @param groupId whose programme
	 * @param week as it shall stand
	 * @param basedOn the revision that was looked at
	 * @param by who writes
	 * @return true if it is written; false if somebody else changed it meanwhile, and
	 * nothing is written
	 */
	@ByGroupCoach
	public boolean write(UUID groupId, ProgrammeWeek week, int basedOn, PersonId by) {
		Optional<Row> before = find(groupId, week.monday());
		int revision = before.map(Row::revision).orElse(0);
		int content = before.map(Row::contentOf).orElse(0);
		return revision == basedOn && insert(groupId, week, new Place(revision + 1, revision + 1, content), by);
	}

	/**
	 * Takes the last change of a week back, and at a further call the one before it.
	 * @param groupId whose programme
	 * @param day any day of the week
	 * @param basedOn the revision that was looked at
	 * @param by who does it
	 * @return true if it is taken back; false if somebody else changed the week
	 * meanwhile, or there is nothing to take back
	 */
	@ByGroupCoach
	public boolean goBack(UUID groupId, LocalDate day, int basedOn, PersonId by) {
		LocalDate monday = mondayOf(day);
		Row now = find(groupId, monday).orElse(null);
		if (now == null || now.revision() != basedOn || now.contentOf() == 0) {
			return false;
		}
		Optional<Row> then = revision(groupId, monday, now.beforeIt());
		return insert(groupId, then.map(Row::week).orElseGet(() -> empty(monday)),
				new Place(now.revision() + 1, now.beforeIt(), then.map(Row::beforeIt).orElse(0)), by);
	}

	/** Of two who write at once one finds the revision taken. */
	private boolean insert(UUID groupId, ProgrammeWeek week, Place place, PersonId by) {
		int rows = this.jdbc.sql("""
				insert into programme_week (group_id, monday, revision, kind, sessions, content_of, before_it, made_by,
					made_at) values (?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing""")
			.params(groupId, week.monday(), place.revision(), week.kind().name(), SessionsJson.write(week.sessions()),
					place.contentOf(), place.beforeIt(), by.value(), this.clock.instant().atOffset(ZoneOffset.UTC))
			.update();
		return rows == 1;
	}

	private Optional<Row> find(UUID groupId, LocalDate monday) {
		return latest(groupId, monday, monday).stream().findFirst();
	}

	private List<Row> latest(UUID groupId, LocalDate from, LocalDate to) {
		return this.jdbc.sql(LATEST)
			.param("group", groupId)
			.param("from", from)
			.param("to", to)
			.query(Programmes::row)
			.list();
	}

	private Optional<Row> revision(UUID groupId, LocalDate monday, int revision) {
		return this.jdbc
			.sql("select w.*, null as by_name from programme_week w where group_id = ? and monday = ? and revision = ?")
			.params(groupId, monday, revision)
			.query(Programmes::row)
			.optional();
	}

	private static Row row(ResultSet row, int number) throws SQLException {
		LocalDate monday = row.getObject("monday", LocalDate.class);
		return new Row(
				new ProgrammeWeek(monday, ProgrammeWeek.Kind.valueOf(row.getString("kind")),
						SessionsJson.read(row.getString("sessions"))),
				row.getInt("revision"), row.getInt("content_of"), row.getInt("before_it"), row.getString("by_name"),
				row.getObject("made_at", OffsetDateTime.class));
	}

	private static ProgrammeWeek empty(LocalDate monday) {
		return new ProgrammeWeek(monday, ProgrammeWeek.Kind.LOADING, List.of());
	}

	/**
	 * Whether the week of a day has a page: those that begin in the years 2000 to 2199
	 * have one, as files take no other years.
	 * @param day any day of the week
	 * @return false for any other
	 */
	public static boolean hasWeekOf(LocalDate day) {
		return !day.isBefore(FIRST) && day.isBefore(END);
	}

	static LocalDate mondayOf(LocalDate day) {
		return day.minusDays(day.getDayOfWeek().getValue() - 1L);
	}

	private record Place(int revision, int contentOf, int beforeIt) {
	}

	private record Row(ProgrammeWeek week, int revision, int contentOf, int beforeIt,
			@org.jspecify.annotations.Nullable String by, OffsetDateTime at) {

		LocalDate monday() {
			return this.week.monday();
		}

	}

}
