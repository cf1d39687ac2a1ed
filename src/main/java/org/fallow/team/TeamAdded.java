package org.fallow.team;

import java.time.Instant;
import java.util.UUID;

/**
 * A team was added to a club, in the transaction still running.
 *
 * @param teamId the team
 * @param at when
 */
public record TeamAdded(UUID teamId, Instant at) {
}
