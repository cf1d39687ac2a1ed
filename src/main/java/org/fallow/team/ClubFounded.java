package org.fallow.team;

import java.time.Instant;
import java.util.UUID;

/**
 * A club was made, in the transaction still running.
 *
 * @param clubId the club
 * @param at when
 */
public record ClubFounded(UUID clubId, Instant at) {
}
