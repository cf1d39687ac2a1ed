package org.fallow.board.web;

import java.time.LocalDate;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.jspecify.annotations.Nullable;

/**
 * The head of an athlete's page.
 *
 * @param id for links
 * @param name the athlete's
 * @param groupName absent without a group
 * @param teamName the home team's
 * @param under18 whether a guardian is to be named
 * @param zone the athlete's time zone
 */
public record AthleteHead(UUID id, String name, @Nullable String groupName, String teamName, boolean under18,
		String zone) {

	static AthleteHead of(Athlete athlete, Squad squad, PersonId coach, LocalDate day) {
		String team = squad.teamsOf(coach)
			.stream()
			.filter((t) -> t.id().equals(athlete.teamId()))
			.map(Team::name)
			.findFirst()
			.orElse("");
		return new AthleteHead(athlete.id().value(), athlete.name(),
				BoardPage.groupName(athlete, squad.groupsOf(athlete.teamId())), team, athlete.isUnder18(day),
				athlete.zone().getId());
	}

}
