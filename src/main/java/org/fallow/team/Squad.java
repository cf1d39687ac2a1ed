package org.fallow.team;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;

import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Who is in the teams, and who may look after whom: a coach sees the athletes of the
 * teams they coach, and nobody else's.
 */
@Service
@Transactional(readOnly = true)
public class Squad {

	private static final String ATHLETE = """
			select p.id, p.name, p.zone_id, p.birth_date, p.since_day, m.team_id, m.group_id, m.external_code
			from membership m join person p on p.id = m.person_id\s""";

	/** The team somebody trains in, or trained in last. */
	private static final String HOME = """
			and m.team_id = (select h.team_id from membership h where h.person_id = m.person_id
				order by h.left_at desc nulls first, h.team_id limit 1)\s""";

	/** Posts of a person that hold at an instant. */
	private static final String HELD = """
			c.person_id = ? and c.ended_at is null and (c.until_at is null or c.until_at > ?)\s""";

	/** That such a post c covers the athlete of a membership m, who shares. */
	private static final String COVERS = """
			c.team_id = m.team_id and m.shares and m.left_at is null
			and (c.whole_team or exists
				(select 1 from post_group g where g.post_id = c.id and g.group_id = m.group_id))\s""";

	/**
	 * That a membership m is in a team of such a post. As an array it is known before
	 * memberships are looked for, so only those of the teams are read and not
	 * everybody's.
	 */
	private static final String IN_TEAMS = "m.team_id = any (array(select c.team_id from post c where " + HELD + ")) ";

	private static final String TEAM = "select t.id, t.club_id, t.name, t.zone_id from team t ";

	private final JdbcClient jdbc;

	private final Clock clock;

	Squad(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The teams a person coaches, in whatever post.
	 * @param coach the person
	 * @return the teams by name, empty for somebody who coaches none
	 */
	public List<Team> teamsOf(PersonId coach) {
		return this.jdbc
			.sql(TEAM + "where t.id in (select c.team_id from post c where " + HELD + ") order by t.name, t.id")
			.params(coach.value(), now())
			.query(Rows::team)
			.list();
	}

	/**
	 * The teams a person leads as head coach.
	 * @param coach the person
	 * @return the teams by name
	 */
	public List<Team> teamsLedBy(PersonId coach) {
		return this.jdbc
			.sql(TEAM + "where t.id in (select c.team_id from post c where " + HELD
					+ "and c.kind = 'HEAD_COACH') order by t.name, t.id")
			.params(coach.value(), now())
			.query(Rows::team)
			.list();
	}

	/**
	 * The teams of the clubs a person owns.
	 * @param owner the person
	 * @return the teams by name
	 */
	public List<Team> teamsOwnedBy(PersonId owner) {
		return this.jdbc
			.sql(TEAM + "where t.club_id in (select c.club_id from post c where " + HELD
					+ "and c.kind = 'OWNER') order by t.name, t.id")
			.params(owner.value(), now())
			.query(Rows::team)
			.list();
	}

	/**
	 * Clubs by their ids.
	 * @param ids which
	 * @return id and name, by name
	 */
	public Map<UUID, String> clubs(Collection<UUID> ids) {
		Map<UUID, String> clubs = new LinkedHashMap<>();
		this.jdbc.sql("select id, name from club where id = any (?) order by name, id")
			.param(ids.toArray(UUID[]::new))
			.query((row) -> {
				clubs.put(row.getObject("id", UUID.class), row.getString("name"));
			});
		return clubs;
	}

	/**
	 * What a person is here now.
	 * @param person the person
	 * @return over all teams and clubs
	 */
	public Standing standing(PersonId person) {
		return this.jdbc.sql("""
				select exists (select 1 from membership where person_id = ?) as athlete,
					coalesce(bool_or(c.kind <> 'OWNER'), false) as coach,
					coalesce(bool_or(c.kind = 'HEAD_COACH'), false) as head_coach,
					coalesce(bool_or(c.kind = 'OWNER'), false) as owner
				from post c where\s""" + HELD)
			.params(person.value(), person.value(), now())
			.query((row, number) -> new Standing(row.getBoolean("athlete"), row.getBoolean("coach"),
					row.getBoolean("head_coach"), row.getBoolean("owner")))
			.single();
	}

	/**
	 * The groups of a team.
	 * @param teamId the team
	 * @return the groups by name
	 */
	public List<Group> groupsOf(UUID teamId) {
		return this.jdbc.sql("select id, team_id, name from training_group where team_id = ? order by name, id")
			.param(teamId)
			.query(Rows::group)
			.list();
	}

	/**
	 * The groups a coach has in charge.
	 * @param coach the person
	 * @return by name, each with the post that allows most
	 */
	public List<Charge> groupsCoachedBy(PersonId coach) {
		return this.jdbc.sql("""
				select g.id, g.team_id, g.name, min(case c.kind when 'HEAD_COACH' then 1 when 'GROUP_COACH' then 2
					else 3 end) as rank
				from training_group g join post c on c.team_id = g.team_id
				where\s""" + HELD + """
				and (c.whole_team or exists
					(select 1 from post_group p where p.post_id = c.id and p.group_id = g.id))
				group by g.id, g.team_id, g.name order by g.name, g.id""")
			.params(coach.value(), now())
			.query((row, number) -> new Charge(Rows.group(row, number), switch (row.getInt("rank")) {
				case 1 -> Post.HEAD_COACH;
				case 2 -> Post.GROUP_COACH;
				default -> Post.DEPUTY;
			}))
			.list();
	}

	/**
	 * One group.
	 * @param groupId which
	 * @return the group; empty if there is none of this id
	 */
	public Optional<Group> group(UUID groupId) {
		return this.jdbc.sql("select id, team_id, name from training_group where id = ?")
			.param(groupId)
			.query(Rows::group)
			.optional();
	}

	/**
	 * Whether somebody trains in the team of a group, or holds a post there.
	 * @param person who
	 * @param groupId the group
	 * @return true if so
	 */
	public boolean belongsToTeamOf(PersonId person, UUID groupId) {
		return this.jdbc.sql("""
				select exists (select 1 from training_group g where g.id = ? and (
					exists (select 1 from membership m where m.team_id = g.team_id and m.left_at is null
						and m.person_id = ?)
					or exists (select 1 from post c where c.team_id = g.team_id and\s""" + HELD + ")))")
			.params(groupId, person.value(), person.value(), now())
			.query(Boolean.class)
			.single();
	}

	/**
	 * All athletes a coach looks after and who share their data.
	 * @param coach the person
	 * @return athletes this person's posts cover, by name
	 */
	public List<Athlete> athletesOf(PersonId coach) {
		return this.jdbc
			.sql(ATHLETE + "where " + IN_TEAMS + "and exists (select 1 from post c where " + HELD + "and " + COVERS
					+ ") order by p.name, p.id")
			.params(coach.value(), now(), coach.value(), now())
			.query(Rows::athlete)
			.list();
	}

	/**
	 * How many athletes of a coach share nothing at present, so that no board shows them.
	 * @param coach the person
	 * @return their number
	 */
	public int silentOnesOf(PersonId coach) {
		return this.jdbc
			.sql("select count(*) from membership m where m.left_at is null and not m.shares and " + IN_TEAMS)
			.params(coach.value(), now())
			.query(Integer.class)
			.single();
	}

	/**
	 * The athletes of a team who share their data, whoever asks: the caller checks
	 * {@link #mayCoachTeam}.
	 * @param teamId the team
	 * @return its athletes, by name
	 */
	public List<Athlete> athletesIn(UUID teamId) {
		return this.jdbc.sql(ATHLETE + "where m.team_id = ? and m.left_at is null and m.shares order by p.name, p.id")
			.param(teamId)
			.query(Rows::athlete)
			.list();
	}

	/**
	 * Every athlete here; for jobs only.
	 * @return all athletes in the order of their ids
	 */
	public List<Athlete> everyone() {
		return this.jdbc.sql(ATHLETE + "where true " + HOME + "order by p.id").query(Rows::athlete).list();
	}

	/**
	 * One athlete.
	 * @param id the person
	 * @return the athlete; empty if there is no such person or it is no athlete
	 */
	public Optional<Athlete> find(PersonId id) {
		return this.jdbc.sql(ATHLETE + "where p.id = ? " + HOME).param(id.value()).query(Rows::athlete).optional();
	}

	/**
	 * Several athletes.
	 * @param ids the people
	 * @return by name; without those who are no athletes
	 */
	public List<Athlete> find(Collection<PersonId> ids) {
		return this.jdbc.sql(ATHLETE + "where p.id in (select unnest(?::uuid[])) " + HOME + "order by p.name, p.id")
			.param(ids.stream().map(PersonId::value).toArray(UUID[]::new))
			.query(Rows::athlete)
			.list();
	}

	/**
	 * One athlete that must exist.
	 * @param id the person
	 * @return the athlete
	 * @throws NoSuchAthlete if there is no such person or it is no athlete
	 */
	public Athlete athlete(PersonId id) {
		return find(id).orElseThrow(() -> new NoSuchAthlete(id));
	}

	/**
	 * The name of any person here.
	 * @param id the person
	 * @return the name, empty if there is no such person
	 */
	public Optional<String> nameOf(PersonId id) {
		return this.jdbc.sql("select name from person where id = ?").param(id.value()).query(String.class).optional();
	}

	/**
	 * The zone in which a person's civil days are counted.
	 * @param id the person
	 * @return the zone, empty if there is no such person
	 */
	public Optional<ZoneId> zoneOf(PersonId id) {
		return this.jdbc.sql("select zone_id from person where id = ?")
			.param(id.value())
			.query(String.class)
			.optional()
			.map(ZoneId::of);
	}

	/**
	 * Whether anybody else in more than a deputy's post looks after an athlete.
	 * @param athlete who
	 * @return false for somebody who is alone, and where the athlete shares nothing
	 */
	public boolean isFullyCoached(PersonId athlete) {
		return this.jdbc
			.sql("select exists (select 1 from membership m join post c on c.team_id = m.team_id where m.person_id = ? "
					+ "and c.person_id <> m.person_id and c.kind in ('HEAD_COACH', 'GROUP_COACH') "
					+ "and c.ended_at is null and (c.until_at is null or c.until_at > ?) and " + COVERS + ")")
			.params(athlete.value(), now())
			.query(Boolean.class)
			.single();
	}

	/**
	 * Whether a person may look after an athlete.
	 * @param coach the person who asks
	 * @param athlete the athlete asked about
	 * @return true if a post of the person covers the athlete, who shares; false for
	 * strangers and for athletes that do not exist
	 */
	public boolean mayCoach(PersonId coach, PersonId athlete) {
		return postFor(coach, athlete).isPresent();
	}

	/**
	 * By which post a person looks after an athlete.
	 * @param coach the person who asks
	 * @param athlete the athlete asked about
	 * @return the post that allows most; empty if none covers the athlete
	 */
	public Optional<Post> postFor(PersonId coach, PersonId athlete) {
		return this.jdbc
			.sql("select c.kind from membership m join post c on " + COVERS + "where m.person_id = ? and " + HELD)
			.params(athlete.value(), coach.value(), now())
			.query((row, number) -> Post.valueOf(row.getString("kind")))
			.list()
			.stream()
			.min(Comparator.naturalOrder());
	}

	/**
	 * By which posts a person looks after several athletes, asked at once.
	 * @param coach the person who asks
	 * @param athletes the athletes asked about
	 * @return for each the post that allows most; those whom none covers are absent
	 */
	public Map<PersonId, Post> postsFor(PersonId coach, Collection<PersonId> athletes) {
		Map<PersonId, Post> posts = new HashMap<>();
		this.jdbc
			.sql("select m.person_id, c.kind from membership m join post c on " + COVERS
					+ "where m.person_id = any (?) and " + HELD)
			.params(athletes.stream().map(PersonId::value).toArray(UUID[]::new), coach.value(), now())
			.query((RowCallbackHandler) (row) -> posts.merge(new PersonId(row.getObject("person_id", UUID.class)),
					Post.valueOf(row.getString("kind")), (one, other) -> (one.compareTo(other) < 0) ? one : other));
		return posts;
	}

	/**
	 * Whether there is neither a coach who covers an athlete nor an owner of the club,
	 * apart from the athlete: then nobody could confirm what the athlete tells.
	 * @param athlete the athlete asked about
	 * @return true if the athlete is all there is
	 */
	public boolean isAllThereIs(PersonId athlete) {
		String other = "c.person_id <> m.person_id and c.ended_at is null and (c.until_at is null or c.until_at > ?) ";
		return this.jdbc.sql("select not exists (select 1 from membership m join post c on " + COVERS + "and " + other
				+ "where m.person_id = ?) and not exists (select 1 from membership m join team t on t.id = m.team_id "
				+ "join post c on c.club_id = t.club_id and c.kind = 'OWNER' and " + other
				+ "where m.person_id = ? and m.left_at is null)")
			.params(now(), athlete.value(), now(), athlete.value())
			.query(Boolean.class)
			.single();
	}

	/**
	 * Whether a person may look after each of several athletes.
	 * @param coach the person who asks
	 * @param athletes the athletes asked about
	 * @return true if the person's posts cover all of them
	 */
	public boolean mayCoachAll(PersonId coach, Collection<PersonId> athletes) {
		UUID[] ids = athletes.stream().map(PersonId::value).distinct().toArray(UUID[]::new);
		int covered = this.jdbc
			.sql("select count(*) from membership m where m.person_id = any (?) "
					+ "and exists (select 1 from post c where " + HELD + "and " + COVERS + ")")
			.params(ids, coach.value(), now())
			.query(Integer.class)
			.single();
		return covered == ids.length;
	}

	/**
	 * Whether a person coaches a team.
	 * @param coach the person who asks
	 * @param teamId the team asked about
	 * @return true if so
	 */
	public boolean mayCoachTeam(PersonId coach, UUID teamId) {
		return teamsOf(coach).stream().anyMatch((team) -> team.id().equals(teamId));
	}

	/**
	 * Whether a person leads a team as head coach.
	 * @param coach the person who asks
	 * @param teamId the team asked about
	 * @return true if so
	 */
	public boolean leads(PersonId coach, UUID teamId) {
		return teamsLedBy(coach).stream().anyMatch((team) -> team.id().equals(teamId));
	}

	/**
	 * The athletes of the teams a person leads, those who share nothing among them: names
	 * and ages, no health data. Sign-in names are told to the present person only.
	 * @param coach the head coach
	 * @return by name; each one's age is that of the day in the athlete's zone
	 */
	public List<Member> membersOf(PersonId coach) {
		return this.jdbc.sql("""
				select p.id, p.name, a.username, m.team_id, t.name as team_name, g.name as group_name,
					p.birth_date, p.zone_id, m.shares, m.external_code, said.kind, said.basis
				from membership m
				join person p on p.id = m.person_id
				join team t on t.id = m.team_id
				left join training_group g on g.id = m.group_id
				left join squad_usernames(?) a on a.person_id = p.id
				left join lateral (select c.kind, c.basis from consent c where c.athlete_id = m.person_id
					and c.team_id = m.team_id order by c.at desc, c.id desc limit 1) said on true
				where m.left_at is null and m.team_id in
					(select c.team_id from post c where c.kind = 'HEAD_COACH' and\s""" + HELD + """
				) order by p.name, p.id""")
			.params(now(), coach.value(), now())
			.query((row, number) -> Rows.member(row, this.clock.instant()))
			.list();
	}

	private OffsetDateTime now() {
		return this.clock.instant().atOffset(ZoneOffset.UTC);
	}

}
