package org.fallow.team;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * An invitation that can still be accepted.
 *
 * @param id names it
 * @param offer what it offers
 * @param teamName the team's name; absent for an owner
 * @param clubName the club's name
 * @param madeBy who invites
 * @param madeByName the inviter's name
 * @param expiresAt from when on it no longer works
 */
public record Invitation(UUID id, NewInvitation offer, @Nullable String teamName, String clubName, PersonId madeBy,
		String madeByName, Instant expiresAt) {

	/** What the database calls an invitation without a post. */
	static final String ATHLETE = "ATHLETE";

	/**
	 * Whether it is for an athlete.
	 * @return true if no post is offered
	 */
	public boolean forAthlete() {
		return this.offer.post() == null;
	}

	/**
	 * Whether whoever accepts must be somebody new: it is for an athlete on file.
	 * @return true if so
	 */
	public boolean onFile() {
		return this.offer.person() != null;
	}

}
