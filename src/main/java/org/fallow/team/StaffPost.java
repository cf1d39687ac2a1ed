package org.fallow.team;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * A post that somebody holds now.
 *
 * @param id names it
 * @param person who holds it
 * @param name the person's
 * @param kind which post
 * @param clubId in which club
 * @param teamId in which team; absent for an owner
 * @param teamName its name; absent for an owner
 * @param wholeTeam whether all athletes of the team are covered
 * @param groups names of the groups covered, if not the whole team
 * @param until when it ends by itself, exclusive; absent for an open end
 */
public record StaffPost(UUID id, PersonId person, String name, Post kind, UUID clubId, @Nullable UUID teamId,
		@Nullable String teamName, boolean wholeTeam, List<String> groups, @Nullable Instant until) {
}
