package org.fallow.team;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;

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
			from membership m join person p on p.id = m.person_id
			where m.role = 'ATHLETE'\s""";

	private static final String TEAM = "select t.id, t.club_id, t.name, t.zone_id from team t ";

	private final JdbcClient jdbc;

	Squad(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The teams a person coaches.
	 * @param coach the person
	 * @return the teams by name, empty for somebody who coaches none
	 */
	public List<Team> teamsOf(PersonId coach) {
		return this.jdbc
			.sql(TEAM + "join membership m on m.team_id = t.id and m.role = 'COACH' and m.person_id = ? "
					+ "order by t.name, t.id")
			.param(coach.value())
			.query(Rows::team)
			.list();
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
	 * All athletes a coach looks after.
	 * @param coach the person
	 * @return athletes of the teams this person coaches, by name
	 */
	public List<Athlete> athletesOf(PersonId coach) {
		return this.jdbc.sql(ATHLETE + """
				and m.team_id in (select c.team_id from membership c where c.person_id = ? and c.role = 'COACH')
				order by p.name, p.id""").param(coach.value()).query(Rows::athlete).list();
	}

	/**
	 * The athletes of a team, whoever asks: the caller checks {@link #mayCoachTeam}.
	 * @param teamId the team
	 * @return its athletes, by name
	 */
	public List<Athlete> athletesIn(UUID teamId) {
		return this.jdbc.sql(ATHLETE + "and m.team_id = ? order by p.name, p.id")
			.param(teamId)
			.query(Rows::athlete)
			.list();
	}

	/**
	 * Every athlete here; for jobs only.
	 * @return all athletes in the order of their ids
	 */
	public List<Athlete> everyone() {
		return this.jdbc.sql(ATHLETE + "order by p.id").query(Rows::athlete).list();
	}

	/**
	 * One athlete.
	 * @param id the person
	 * @return the athlete; empty if there is no such person or it is no athlete
	 */
	public Optional<Athlete> find(PersonId id) {
		return this.jdbc.sql(ATHLETE + "and p.id = ?").param(id.value()).query(Rows::athlete).optional();
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
	 * Whether a person may look after an athlete.
	 * @param coach the person who asks
	 * @param athlete the athlete asked about
	 * @return true if the person coaches the athlete's team; false for strangers and for
	 * athletes that do not exist
	 */
	public boolean mayCoach(PersonId coach, PersonId athlete) {
		return this.jdbc.sql("""
				select exists (select 1 from membership a
					join membership c on c.team_id = a.team_id and c.role = 'COACH' and c.person_id = ?
					where a.person_id = ? and a.role = 'ATHLETE')""")
			.params(coach.value(), athlete.value())
			.query(Boolean.class)
			.single();
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
	 * Everybody in the teams a coach belongs to.
	 * @param coach the coach
	 * @param day the day ages are told on
	 * @return by name
	 */
	public List<Member> membersOf(PersonId coach, LocalDate day) {
		return this.jdbc.sql("""
				select p.id, p.name, a.username, m.role, m.team_id, t.name as team_name, g.name as group_name,
					p.birth_date
				from membership m
				join person p on p.id = m.person_id
				join team t on t.id = m.team_id
				left join training_group g on g.id = m.group_id
				left join account a on a.person_id = p.id
				where m.team_id in (select c.team_id from membership c where c.person_id = ? and c.role = 'COACH')
				order by m.role, p.name, p.id""")
			.param(coach.value())
			.query((row, number) -> Rows.member(row, day))
			.list();
	}

}
