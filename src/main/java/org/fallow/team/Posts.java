package org.fallow.team;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.access.Trace;
import org.fallow.access.TraceSubject;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Who holds which post. A post is ended, never deleted, and what it allowed ends in the
 * same moment.
 */
@Service
@Transactional
public class Posts {

	private static final String HELD = """
			select c.id, c.person_id, p.name, c.kind, c.club_id, c.team_id, t.name as team_name, c.whole_team,
				array(select g.name from post_group x join training_group g on g.id = x.group_id
					where x.post_id = c.id order by g.name) as groups, c.until_at
			from post c join person p on p.id = c.person_id left join team t on t.id = c.team_id
			where c.ended_at is null and (c.until_at is null or c.until_at > ?)\s""";

	private final JdbcClient jdbc;

	private final CurrentPerson current;

	private final Trace trace;

	private final Clock clock;

	Posts(JdbcClient jdbc, CurrentPerson current, Trace trace, Clock clock) {
		this.jdbc = jdbc;
		this.current = current;
		this.trace = trace;
		this.clock = clock;
	}

	/**
	 * Gives a post to a person. Whoever gives it may do so: {@link #mayGive}.
	 * @param person who gets it
	 * @param post which
	 * @return the post's id
	 */
	public UUID give(PersonId person, NewPost post) {
		UUID id = Ids.next();
		this.jdbc.sql("""
				insert into post (id, person_id, club_id, team_id, kind, whole_team, begun_at, until_at, given_by)
				values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
			.params(id, person.value(), post.clubId())
			.param(post.teamId())
			.params(post.kind().name(), post.wholeTeam(), at(this.clock.instant()))
			.param((post.until() == null) ? null : at(post.until()))
			.param(giver(person))
			.update();
		if (!post.wholeTeam()) {
			post.groups()
				.forEach(
						(group) -> this.jdbc.sql("insert into post_group (post_id, team_id, group_id) values (?, ?, ?)")
							.param(id)
							.param(post.teamId())
							.param(group)
							.update());
		}
		this.current.id().ifPresent((giver) -> this.trace.notePost(id, TraceSubject.POST_GIVEN, giver));
		return id;
	}

	private @Nullable UUID giver(PersonId person) {
		return this.current.id().filter((giver) -> !giver.equals(person)).map(PersonId::value).orElse(null);
	}

	/**
	 * Whether a person may give a post, or take it away: a head coach the posts of the
	 * own team, an owner all of the own club.
	 * @param giver who
	 * @param kind which post
	 * @param clubId in which club
	 * @param teamId in which team; absent for an owner's
	 * @return true if so
	 */
	@Transactional(readOnly = true)
	public boolean mayGive(PersonId giver, Post kind, UUID clubId, @Nullable UUID teamId) {
		return of(giver).stream().anyMatch((own) -> switch (own.kind()) {
			case OWNER -> own.clubId().equals(clubId);
			case HEAD_COACH -> kind != Post.OWNER && own.teamId() != null && own.teamId().equals(teamId);
			default -> false;
		});
	}

	/**
	 * Ends a post at once.
	 * @param id the post
	 * @param by who ends it
	 * @return the post that was ended; empty if there is no such post, it has ended, or
	 * {@code by} may not end it. The last owner of a club cannot be ended, nor the last
	 * head coach of a team
	 */
	public Optional<StaffPost> end(UUID id, PersonId by) {
		Optional<StaffPost> found = find(id)
			.filter((post) -> post.person().equals(by) || mayGive(by, post.kind(), post.clubId(), post.teamId()))
			.filter((post) -> !isLast(post));
		found.ifPresent((post) -> {
			this.jdbc.sql("update post set ended_at = ?, ended_by = ? where id = ? and ended_at is null")
				.params(at(this.clock.instant()), by.value(), id)
				.update();
			this.trace.notePost(id, TraceSubject.POST_ENDED, by);
		});
		return found;
	}

	private boolean isLast(StaffPost post) {
		if (post.kind() != Post.OWNER && post.kind() != Post.HEAD_COACH) {
			return false;
		}
		UUID where = (post.teamId() != null) ? post.teamId() : post.clubId();
		String column = (post.teamId() != null) ? "team_id" : "club_id";
		return this.jdbc
			.sql("select count(*) from (select 1 from post where " + column
					+ " = ? and kind = ? and ended_at is null for update) as held")
			.params(where, post.kind().name())
			.query(Integer.class)
			.single() < 2;
	}

	/**
	 * A post that holds now.
	 * @param id names it
	 * @return the post; empty if there is none or it has ended
	 */
	@Transactional(readOnly = true)
	public Optional<StaffPost> find(UUID id) {
		return this.jdbc.sql(HELD + "and c.id = ?").params(now(), id).query(Posts::post).optional();
	}

	/**
	 * The posts a person holds now.
	 * @param person who
	 * @return in the order of their powers
	 */
	@Transactional(readOnly = true)
	public List<StaffPost> of(PersonId person) {
		return this.jdbc.sql(HELD + "and c.person_id = ? order by c.kind, t.name, c.id")
			.params(now(), person.value())
			.query(Posts::post)
			.list();
	}

	/**
	 * Whether somebody is charged with, or trains in, more than the teams that the
	 * present person leads, which the policies would otherwise hide.
	 * @param person who
	 * @return true if so
	 */
	@Transactional(readOnly = true)
	public boolean hasMore(PersonId person) {
		return this.jdbc.sql("select fallow_has_more(?)").param(person.value()).query(Boolean.class).single();
	}

	/**
	 * The posts that cover an athlete, who shares or not: who sees the data while shared.
	 * @param athlete whose
	 * @return by kind, then by name; empty for an athlete in no team
	 */
	@Transactional(readOnly = true)
	public List<StaffPost> covering(PersonId athlete) {
		return this.jdbc
			.sql(HELD + "and exists (select 1 from membership m where m.person_id = ? and m.left_at is null "
					+ "and m.team_id = c.team_id and (c.whole_team or exists (select 1 from post_group x "
					+ "where x.post_id = c.id and x.group_id = m.group_id))) order by c.kind, p.name, c.id")
			.params(now(), athlete.value())
			.query(Posts::post)
			.list();
	}

	/**
	 * The posts in a team, and the owners of its club.
	 * @param team the team
	 * @return by kind, then by name
	 */
	@Transactional(readOnly = true)
	public List<StaffPost> in(Team team) {
		return this.jdbc
			.sql(HELD + "and (c.team_id = ? or (c.team_id is null and c.club_id = ?)) order by c.kind, p.name, c.id")
			.params(now(), team.id(), team.clubId())
			.query(Posts::post)
			.list();
	}

	/**
	 * All posts in some clubs.
	 * @param clubs the clubs
	 * @return owners first, then by team, kind and name
	 */
	@Transactional(readOnly = true)
	public List<StaffPost> inClubs(Collection<UUID> clubs) {
		return this.jdbc.sql(HELD + "and c.club_id = any (?) order by t.name nulls first, c.kind, p.name, c.id")
			.params(now(), clubs.toArray(UUID[]::new))
			.query(Posts::post)
			.list();
	}

	private OffsetDateTime now() {
		return at(this.clock.instant());
	}

	private static OffsetDateTime at(Instant instant) {
		return instant.atOffset(ZoneOffset.UTC);
	}

	private static StaffPost post(ResultSet row, int number) throws SQLException {
		Array groups = row.getArray("groups");
		OffsetDateTime until = row.getObject("until_at", OffsetDateTime.class);
		return new StaffPost(row.getObject("id", UUID.class), new PersonId(row.getObject("person_id", UUID.class)),
				row.getString("name"), Post.valueOf(row.getString("kind")), row.getObject("club_id", UUID.class),
				row.getObject("team_id", UUID.class), row.getString("team_name"), row.getBoolean("whole_team"),
				List.of((String[]) groups.getArray()), (until == null) ? null : until.toInstant());
	}

}
