package org.fallow.team;

import java.time.LocalDate;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * One line of a team's list of athletes.
 *
 * @param id the person
 * @param name the name
 * @param username e-mail the person signs in with; absent without an account
 * @param teamId the team
 * @param teamName its name
 * @param groupName the athlete's group; absent if none
 * @param birthDate absent where not told
 * @param under18 whether the athlete counts as a minor today
 * @param shares whether the coaches see the athlete's data
 * @param word by whose word: the name of a {@link Basis}, or of the {@link Consent.Kind}
 * of what was said last
 * @param code what names the athlete in files
 */
public record Member(PersonId id, String name, @Nullable String username, UUID teamId, String teamName,
		@Nullable String groupName, @Nullable LocalDate birthDate, boolean under18, boolean shares, String word,
		String code) {
}
