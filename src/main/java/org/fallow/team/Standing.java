package org.fallow.team;

/**
 * What a person is here at this moment, over all teams and clubs.
 *
 * @param athlete trains in a team, or did
 * @param coach looks after athletes, in whatever post
 * @param headCoach leads a team
 * @param owner has a club
 */
public record Standing(boolean athlete, boolean coach, boolean headCoach, boolean owner) {
}
