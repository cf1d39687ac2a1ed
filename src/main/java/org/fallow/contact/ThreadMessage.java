package org.fallow.contact;

import java.time.Instant;
import java.time.LocalDate;

import org.fallow.access.PersonId;
import org.fallow.team.Role;

/**
 * One message between an athlete and coaches.
 *
 * @param about day of the decision it is about
 * @param body plain text, lines ended by a line feed
 * @param at when it was sent
 * @param actor who sent it
 * @param name as named at the time
 * @param role as the athlete or as a coach
 */
public record ThreadMessage(LocalDate about, String body, Instant at, PersonId actor, String name, Role role) {
}
