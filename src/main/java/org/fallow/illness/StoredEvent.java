package org.fallow.illness;

import org.fallow.access.PersonId;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.team.Role;

/**
 * An illness event as stored.
 *
 * @param event what was said or decided
 * @param actor who recorded it
 * @param role in which role
 */
public record StoredEvent(IllnessEvent event, PersonId actor, Role role) {
}
