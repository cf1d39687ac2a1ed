package org.fallow.team;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * An invitation to be made.
 *
 * @param post the post offered; absent for an athlete
 * @param clubId into which club
 * @param teamId into which team; absent for an owner
 * @param name whom the inviter means
 * @param person the athlete on file it is for; absent where accepting makes a person
 * @param groups of an athlete one at most; of a coach of groups or deputy those covered
 * @param wholeTeam whether a deputy covers all athletes
 * @param until end of a deputy's post, exclusive; absent for others
 */
public record NewInvitation(@Nullable Post post, UUID clubId, @Nullable UUID teamId, String name,
		@Nullable PersonId person, List<UUID> groups, boolean wholeTeam, @Nullable Instant until) {

	/**
	 * Checks what the post or the athlete needs.
	 * @throws IllegalArgumentException as {@link NewPost} says; or for an athlete without
	 * a team or with several groups
	 */
	public NewInvitation {
		name = NameKey.cleaned(name);
		groups = List.copyOf(groups);
		if (name.isEmpty() || name.length() > NewAthlete.LONGEST_NAME || NameKey.hasControl(name)) {
			throw new IllegalArgumentException("a name has 1 to " + NewAthlete.LONGEST_NAME + " characters");
		}
		if (post != null) {
			new NewPost(post, clubId, teamId, wholeTeam, groups, until);
		}
		else if (teamId == null || groups.size() > 1) {
			throw new IllegalArgumentException("an athlete has one team and one group at most");
		}
	}

	/**
	 * For an athlete on file who cannot sign in yet.
	 * @param athlete who
	 * @param clubId the club of the athlete's team
	 * @return the invitation
	 */
	public static NewInvitation onFile(Athlete athlete, UUID clubId) {
		return new NewInvitation(null, clubId, athlete.teamId(), athlete.name(), athlete.id(), List.of(), false, null);
	}

	/** The least post whose giver may invite: athletes are invited by who leads them. */
	Post needs() {
		return (this.post == null) ? Post.GROUP_COACH : this.post;
	}

	String kind() {
		return (this.post == null) ? Invitation.ATHLETE : this.post.name();
	}

}
