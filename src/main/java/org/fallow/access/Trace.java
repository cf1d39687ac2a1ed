package org.fallow.access;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
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

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
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
	private final Map<PersonId, Set<Shown>> boards = new ConcurrentHashMap<>();

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
		note(athlete, zone, new TraceActor(actor, "", post), action, what, null);
	}

	/**
	 * Notes that something was done about a way into somebody's account.
	 * @param person whose account, an athlete's or not
	 * @param zone the person's, for the day
	 * @param actor who, and by which right; named as the database knows them
	 * @param what the link, the password or the passkey
	 * @param about who had made the link; absent for what is about none
	 */
	public void noteAccount(PersonId person, ZoneId zone, TraceActor actor, TraceSubject what, @Nullable String about) {
		note(person, zone, actor, TraceAction.CHANGED, what, about);
	}

	private void note(PersonId athlete, ZoneId zone, TraceActor actor, TraceAction action, TraceSubject what,
			@Nullable String about) {
		this.jdbc.sql("""
				insert into access_trace (athlete_id, id, at, actor_id, action, what, actor_name, post, address, day,
					about_name, link_by)
				values (?, ?, ?, ?, ?, ?, (select name from person where id = ?), ?, ?, ?, ?, ?)""")
			.params(athlete.value(), Ids.next(), now(), actor.id().value(), action.name(), what.name(),
					actor.id().value(), actor.post())
			.param(address())
			.param(LocalDate.ofInstant(this.clock.instant(), zone))
			.param(about)
			.param(linkBy(actor.id()))
			.update();
	}

	/**
	 * Notes that a post was given or ended, with everybody whom it covers.
	 * @param post the post's id
	 * @param what given or ended
	 * @param actor who did it
	 */
	public void notePost(UUID post, TraceSubject what, PersonId actor) {
		this.jdbc.sql("select fallow_trace_post(?, ?, ?, ?, ?)")
			.params(post, what.name(), actor.value(), now())
			.param(address())
			.query((row) -> {
				// nothing comes back
			});
	}

	private static @Nullable String linkBy(PersonId actor) {
		Authentication present = SecurityContextHolder.getContext().getAuthentication();
		return (present != null && present.getPrincipal() instanceof SignedIn person && person.personId().equals(actor))
				? person.linkBy().orElse(null) : null;
	}

	/**
	 * Notes that athletes' clearances were shown in a list: once a day for each, in one
	 * statement.
	 * @param athletes whose, each with the own day and the post that covers it
	 * @param actor who
	 */
	public void noteBoard(Collection<Shown> athletes, PersonId actor) {
		Set<Shown> seen = Set.copyOf(athletes);
		if (seen.isEmpty() || seen.equals(this.boards.get(actor))) {
			return;
		}
		List<Shown> rows = List.copyOf(seen);
		this.jdbc
			.sql("""
					insert into access_trace (athlete_id, id, at, actor_id, action, what, actor_name, post, address, link_by,
						day)
					select a.id, a.row, ?, ?, 'LOOKED', 'BOARD', (select name from person where id = ?), a.post, ?, ?,
						cast(a.day as date)
					from unnest(?, ?, ?, ?) as a (id, row, post, day)
					on conflict do nothing""")
			.params(now(), actor.value(), actor.value())
			.param(address())
			.param(linkBy(actor))
			.params(rows.stream().map((row) -> row.athlete().value()).toArray(UUID[]::new),
					rows.stream().map((row) -> Ids.next()).toArray(UUID[]::new),
					rows.stream().map(Shown::post).toArray(String[]::new),
					rows.stream().map((row) -> row.day().toString()).toArray(String[]::new))
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
		return this.jdbc
			.sql("""
					select id, at, actor_id, actor_name, post, action, what, address, about_name, about_post, link_by
					from access_trace where athlete_id = ? and (?::uuid is null or id < ?::uuid) order by id desc limit ?""")
			.param(athlete.value())
			.param(before)
			.param(before)
			.param(most)
			.query(Trace::line)
			.list();
	}

	/**
	 * What others did about the ways into a person's account, and what was done there
	 * after a link of theirs.
	 * @param person whose; nobody else is shown it
	 * @param since from this instant on
	 * @return newest first, at most a hundred
	 */
	@Transactional(readOnly = true)
	public List<TraceLine> ofOtherHands(PersonId person, Instant since) {
		return this.jdbc.sql("""
				select id, at, actor_id, actor_name, post, action, what, address, about_name, about_post, link_by
				from access_trace where athlete_id = ? and at >= ? and (what = 'LINK_MADE'
					or (what = 'LINK_USED' and about_name is not null)
					or (what in ('PASSWORD', 'PASSKEY') and link_by is not null))
				order by id desc limit 100""")
			.params(person.value(), since.atOffset(ZoneOffset.UTC))
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
				row.getString("address"), row.getString("about_name"), row.getString("about_post"),
				row.getString("link_by"));
	}

	/**
	 * An athlete who is shown in a list.
	 *
	 * @param athlete who
	 * @param day the civil day in the athlete's zone
	 * @param post the post of whoever looks that covers this athlete and allows most
	 */
	public record Shown(PersonId athlete, LocalDate day, String post) {
	}

}
