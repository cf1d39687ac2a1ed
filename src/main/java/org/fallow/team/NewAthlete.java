package org.fallow.team;

import java.time.LocalDate;
import java.time.ZoneId;

import org.jspecify.annotations.Nullable;

/**
 * An athlete to be added to a team.
 *
 * @param name not blank, at most 120 characters, none of them a control character
 * @param externalCode the athlete's name in files that are imported, unique in the team;
 * absent if none
 * @param zone absent for the team's
 * @param birthDate absent where not told
 * @param group name of the group, made if the team has none of that name; absent if none
 */
public record NewAthlete(String name, @Nullable String externalCode, @Nullable ZoneId zone,
		@Nullable LocalDate birthDate, @Nullable String group) {

	/** Longest name, characters. */
	public static final int LONGEST_NAME = 120;

	/**
	 * Checks the name.
	 * @throws IllegalArgumentException if the name is blank, too long or no name
	 */
	public NewAthlete {
		name = NameKey.cleaned(name);
		if (name.isEmpty() || name.length() > LONGEST_NAME || NameKey.hasControl(name)) {
			throw new IllegalArgumentException("a name has 1 to " + LONGEST_NAME + " characters");
		}
	}

	/**
	 * An athlete of whom only the name is known.
	 * @param name the name
	 * @return the athlete, in the team's zone
	 */
	public static NewAthlete named(String name) {
		return new NewAthlete(name, null, null, null, null);
	}

}
