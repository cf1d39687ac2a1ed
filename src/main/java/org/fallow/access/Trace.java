package org.fallow.access;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/**
 * Who looked at or changed whose data: only ever added to, by the database's own grants,
 * and read by the athlete alone.
 */
@Service
@Transactional
public class Trace {

	private final JdbcClient jdbc;

	private final Clock clock;

	/**
	 * Whom somebody has been noted for on the board of a day, so that a board that is
	 * loaded again and again costs nothing more. Forgotten at a restart, when the
	 * database's own uniqueness holds.
	 */
	private final Map<PersonId, Board> boards = new ConcurrentHashMap<>();

	Trace(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Notes one look or change, in the running transaction or one of its own.
	 * @param athlete whose data
	 * @param zone the athlete's, for the day
	 * @param actor who
	 * @param post SELF, or the post that covers the athlete
	 * @param action looked or changed
	 * @param what which page or fact
	 */
	public void note(PersonId athlete, ZoneId zone, PersonId actor, String post, TraceAction action,
			TraceSubject what) {
		this.jdbc.sql("""
				insert into access_trace (athlete_id, id, at, actor_id, action, what, actor_name, post, address, day)
				values (?, ?, ?, ?, ?, ?, (select name from person where id = ?), ?, ?, ?)""")
			.params(athlete.value(), Ids.next(), now(), actor.value(), action.name(), what.name(), actor.value(), post)
			.param(address())
			.param(LocalDate.ofInstant(this.clock.instant(), zone))
			.update();
	}

	/**
	 * Notes that athletes' clearances were shown in a list: once a day for each.
	 * @param athletes whose
	 * @param day the civil day
	 * @param actor who
	 * @param post the one that allows most
	 */
	public void noteBoard(Collection<PersonId> athletes, LocalDate day, PersonId actor, String post) {
		Set<UUID> ids = athletes.stream().map(PersonId::value).collect(Collectors.toSet());
		Board seen = new Board(day, ids);
		if (seen.equals(this.boards.get(actor)) || ids.isEmpty()) {
			return;
		}
		List<UUID> rows = List.copyOf(ids);
		this.jdbc.sql("""
				insert into access_trace (athlete_id, id, at, actor_id, action, what, actor_name, post, address, day)
				select a.id, a.row, ?, ?, 'LOOKED', 'BOARD', (select name from person where id = ?), ?, ?, ?
				from unnest(?, ?) as a (id, row)
				on conflict do nothing""")
			.params(now(), actor.value(), actor.value(), post)
			.param(address())
			.params(day, rows.toArray(UUID[]::new), rows.stream().map((row) -> Ids.next()).toArray(UUID[]::new))
			.update();
		this.boards.put(actor, seen);
	}

	/**
	 * The trace of an athlete.
	 * @param athlete whose; nobody else is shown it
	 * @param before only lines before this one; absent for the newest
	 * @param most how many lines
	 * @return newest first
	 */
	@Transactional(readOnly = true)
	public List<TraceLine> of(PersonId athlete, @Nullable UUID before, int most) {
		return this.jdbc.sql("""
				select id, at, actor_id, actor_name, post, action, what, address from access_trace
				where athlete_id = ? and (?::uuid is null or id < ?::uuid) order by id desc limit ?""")
			.param(athlete.value())
			.param(before)
			.param(before)
			.param(most)
			.query(Trace::line)
			.list();
	}

	private OffsetDateTime now() {
		return this.clock.instant().atOffset(ZoneOffset.UTC);
	}

	/** An address that was read as one, whatever the request says. */
	private static @Nullable String address() {
		return (RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes request)
				? NetworkAddress.of(request.getRequest().getRemoteAddr()).map(NetworkAddress::toString).orElse(null)
				: null;
	}

	private static TraceLine line(ResultSet row, int number) throws SQLException {
		return new TraceLine(row.getObject("id", UUID.class), row.getObject("at", OffsetDateTime.class).toInstant(),
				new TraceActor(new PersonId(row.getObject("actor_id", UUID.class)), row.getString("actor_name"),
						row.getString("post")),
				TraceAction.valueOf(row.getString("action")), TraceSubject.valueOf(row.getString("what")),
				row.getString("address"));
	}

	private record Board(LocalDate day, Set<UUID> athletes) {
	}

}
