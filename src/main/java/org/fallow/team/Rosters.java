package org.fallow.team;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

import org.fallow.access.PersonId;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Finds out who of a team's members is meant, for whoever leads the team. Whether the
 * person who asks does is checked by the caller, and by the database.
 */
@Service
@Transactional(readOnly = true)
public class Rosters {

	private final JdbcClient jdbc;

	Rosters(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The members of a team.
	 * @param teamId the team
	 * @return all that ever were, as they are now
	 */
	public Roster of(UUID teamId) {
		Map<PersonId, Roster.Entry> members = new LinkedHashMap<>();
		this.jdbc.sql("""
				select m.person_id, case when m.left_at is null then p.name end as name, m.external_code,
					g.name as group_name, m.shares and m.left_at is null as open
				from membership m left join person p on p.id = m.person_id
				left join training_group g on g.id = m.group_id
				where m.team_id = ? order by p.name, m.person_id""")
			.param(teamId)
			.query(Rosters::entry)
			.list()
			.forEach((member) -> members.put(member.id(), member));
		List<Other> others = others(teamId);
		List<PersonId> aside = others.stream().map((other) -> other.entry().id()).toList();
		Roster roster = new Roster(members.values().stream().filter((member) -> !aside.contains(member.id())).toList());
		others.forEach((other) -> roster.also(Objects.requireNonNull(members.get(other.kept())), other.entry(),
				members.containsKey(other.entry().id())));
		return roster;
	}

	/** Entries that were made part of those of members who are in the team. */
	private List<Other> others(UUID teamId) {
		return this.jdbc
			.sql("""
					select k.person_id as kept, e.id as person_id, p.name, m.external_code, null as group_name, false as open
					from membership k cross join lateral unnest(fallow_entries(k.person_id)) with ordinality as e (id, place)
					left join person p on p.id = e.id
					left join membership m on m.person_id = e.id and m.team_id = k.team_id
					where k.team_id = ? and k.left_at is null and e.place > 1 order by e.id""")
			.param(teamId)
			.query((row, number) -> new Other(new PersonId(row.getObject("kept", UUID.class)), entry(row, number)))
			.list();
	}

	/**
	 * Another entry of a member's.
	 *
	 * @param kept the member
	 * @param entry the other entry
	 */
	private record Other(PersonId kept, Roster.Entry entry) {
	}

	private static Roster.Entry entry(ResultSet row, int number) throws SQLException {
		return Roster.Entry.of(new PersonId(row.getObject("person_id", UUID.class)),
				Objects.requireNonNullElse(row.getString("name"), ""), row.getString("external_code"),
				row.getString("group_name"), row.getBoolean("open"));
	}

	/**
	 * How many members a team has.
	 * @param teamId the team
	 * @return as many as its roster
	 */
	public int count(UUID teamId) {
		return this.jdbc.sql("select count(*) from membership where team_id = ?")
			.param(teamId)
			.query(Integer.class)
			.single();
	}

	/**
	 * Which names are those of members of whom nothing may be taken in: who share nothing
	 * or left. Who it is and why, the database does not say.
	 * @param teamId the team
	 * @param names the names
	 * @return those of them, as they were given
	 */
	public Set<String> closed(UUID teamId, Collection<String> names) {
		Map<String, String> asked = new LinkedHashMap<>();
		names.forEach((name) -> spellings(name).forEach((one) -> asked.put(one, name)));
		Set<String> closed = new TreeSet<>();
		if (!asked.isEmpty()) {
			this.jdbc.sql("select fallow_closed_names(?, ?)")
				.params(teamId, asked.keySet().toArray(String[]::new))
				.query(String.class)
				.list()
				.forEach((one) -> closed.add(Objects.requireNonNull(asked.get(one))));
		}
		return closed;
	}

	/** A database may not know all letters, so capitals are asked both ways. */
	private static List<String> spellings(String name) {
		String bare = NameKey.of(name).bare();
		return bare.isEmpty() ? List.of() : List.of(name.replace("\0", ""), bare, bare.toUpperCase(Locale.ROOT));
	}

	/**
	 * Whether an athlete of a team shares now; from then on until the transaction ends
	 * nobody can take it back.
	 * @param athlete who
	 * @param teamId the team
	 * @return true if so
	 */
	@Transactional(propagation = Propagation.MANDATORY)
	public boolean hold(PersonId athlete, UUID teamId) {
		return this.jdbc.sql("select fallow_hold_sharing(?, ?)")
			.params(athlete.value(), teamId)
			.query(Boolean.class)
			.single();
	}

}
