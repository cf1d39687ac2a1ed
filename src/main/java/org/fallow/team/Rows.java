package org.fallow.team;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.PersonId;

/**
 * Reads rows into the values of this module.
 */
final class Rows {

	private Rows() {
	}

	static Athlete athlete(ResultSet row, int number) throws SQLException {
		return new Athlete(new PersonId(row.getObject("id", UUID.class)), row.getString("name"),
				ZoneId.of(row.getString("zone_id")), row.getObject("birth_date", LocalDate.class),
				row.getObject("team_id", UUID.class), row.getObject("group_id", UUID.class),
				row.getObject("since_day", LocalDate.class), row.getString("external_code"));
	}

	static Team team(ResultSet row, int number) throws SQLException {
		return new Team(row.getObject("id", UUID.class), row.getObject("club_id", UUID.class), row.getString("name"),
				ZoneId.of(row.getString("zone_id")));
	}

	static Group group(ResultSet row, int number) throws SQLException {
		return new Group(row.getObject("id", UUID.class), row.getObject("team_id", UUID.class), row.getString("name"));
	}

	static Member member(ResultSet row, Instant now) throws SQLException {
		LocalDate born = row.getObject("birth_date", LocalDate.class);
		LocalDate today = LocalDate.ofInstant(now, ZoneId.of(row.getString("zone_id")));
		boolean under18 = Athlete.isUnder18(born, today);
		return new Member(new PersonId(row.getObject("id", UUID.class)), row.getString("name"),
				row.getString("username"), row.getObject("team_id", UUID.class), row.getString("team_name"),
				row.getString("group_name"), born, under18, row.getBoolean("shares"), word(row),
				Roster.Entry
					.of(new PersonId(row.getObject("id", UUID.class)), row.getString("name"),
							row.getString("external_code"), null, true)
					.code());
	}

	/** On whose word an athlete's data are kept, by what was said last. */
	private static String word(ResultSet row) throws SQLException {
		String basis = row.getString("basis");
		return (basis != null) ? basis : Objects.requireNonNullElse(row.getString("kind"), Consent.Kind.STATED.name());
	}

}
