package org.fallow.team;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A post to be given.
 *
 * @param kind which post
 * @param clubId in which club
 * @param teamId in which team; absent for an owner
 * @param wholeTeam whether a deputy covers all athletes
 * @param groups the groups covered, of that team
 * @param until when it ends by itself, exclusive; a deputy needs one
 */
public record NewPost(Post kind, UUID clubId, @Nullable UUID teamId, boolean wholeTeam, List<UUID> groups,
		@Nullable Instant until) {

	/**
	 * Checks what a post needs.
	 * @throws IllegalArgumentException for a team where there is none to be, a coach of
	 * no groups, or a deputy without an end
	 */
	public NewPost {
		groups = List.copyOf(groups);
		if ((kind == Post.OWNER) != (teamId == null)) {
			throw new IllegalArgumentException("an owner has a club, all others have a team");
		}
		if (kind == Post.GROUP_COACH && groups.isEmpty()) {
			throw new IllegalArgumentException("a coach of groups needs a group");
		}
		if (kind == Post.DEPUTY && until == null) {
			throw new IllegalArgumentException("a deputy needs a last day");
		}
		wholeTeam = (kind == Post.HEAD_COACH) || (kind == Post.DEPUTY && wholeTeam);
	}

	static NewPost owner(UUID clubId) {
		return new NewPost(Post.OWNER, clubId, null, false, List.of(), null);
	}

	static NewPost headCoach(Team team) {
		return new NewPost(Post.HEAD_COACH, team.clubId(), team.id(), true, List.of(), null);
	}

}
