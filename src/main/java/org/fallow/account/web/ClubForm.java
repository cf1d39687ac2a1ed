package org.fallow.account.web;

import org.jspecify.annotations.Nullable;

/**
 * A team to add, as typed.
 *
 * @param clubId of which club
 * @param name the team's
 * @param zone zone id, for example Europe/Berlin
 */
public record ClubForm(@Nullable String clubId, @Nullable String name, @Nullable String zone) {
}
