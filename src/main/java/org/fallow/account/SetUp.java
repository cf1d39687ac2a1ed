package org.fallow.account;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

import org.fallow.team.NewAthlete;
import org.fallow.wording.Problem;

/**
 * What the set-up page asks, as typed.
 *
 * @param code the one-time code from the log
 * @param clubName the club
 * @param teamName its first team
 * @param zone zone id, for example Europe/Berlin
 * @param name the first coach's name
 * @param username the first coach's e-mail address
 * @param password the first coach's password
 */
public record SetUp(String code, String clubName, String teamName, String zone, String name, String username,
		String password) {

	List<Problem> problems() {
		List<Problem> problems = new ArrayList<>();
		requireName(problems, "clubName", this.clubName);
		requireName(problems, "teamName", this.teamName);
		requireName(problems, "name", this.name);
		if (!isZone(this.zone)) {
			problems.add(Problem.of("zone", "set-up.zone.unknown"));
		}
		return problems;
	}

	private static void requireName(List<Problem> problems, String field, String name) {
		if (name.isBlank() || name.strip().length() > NewAthlete.LONGEST_NAME) {
			problems.add(Problem.of(field, "name.length", NewAthlete.LONGEST_NAME));
		}
	}

	private static boolean isZone(String zone) {
		try {
			ZoneId.of(zone.strip());
			return true;
		}
		catch (DateTimeException ex) {
			return false;
		}
	}

	/** Keeps the password and the code out of logs. */
	@Override
	public String toString() {
		return "SetUp of " + this.clubName;
	}

}
