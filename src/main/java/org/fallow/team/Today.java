package org.fallow.team;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.springframework.stereotype.Component;

/**
 * Which civil day it is now, for whom: days are the athlete's or the team's, never the
 * server's. Nobody else asks the clock for a day. Worked example: on Sunday, 8 March
 * 2026, at 18:00 UTC it is Monday, 9 March, for a team in Auckland.
 */
@Component
public class Today {

	private final Clock clock;

	private final People people;

	Today(Clock clock, People people) {
		this.clock = clock;
		this.people = people;
	}

	/**
	 * An athlete's today.
	 * @param athlete whose
	 * @return the civil day in the athlete's zone
	 */
	public LocalDate of(Athlete athlete) {
		return in(athlete.zone());
	}

	/**
	 * A team's today.
	 * @param team whose
	 * @return the civil day in the team's zone
	 */
	public LocalDate of(Team team) {
		return in(team.zone());
	}

	/**
	 * The today of a team that is known by its id.
	 * @param teamId whose
	 * @return the civil day in the team's zone
	 */
	public LocalDate ofTeam(UUID teamId) {
		return in(this.people.zoneOf(teamId));
	}

	/**
	 * The day of a page that shows several teams.
	 * @param teams in the order shown
	 * @return the first one's today; the one of UTC for somebody without a team
	 */
	public LocalDate ofFirst(List<Team> teams) {
		return teams.isEmpty() ? in(ZoneOffset.UTC) : of(teams.get(0));
	}

	/**
	 * The day in a zone.
	 * @param zone where
	 * @return the civil day
	 */
	public LocalDate in(ZoneId zone) {
		return LocalDate.ofInstant(this.clock.instant(), zone);
	}

}
