package org.fallow.rules;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * A rule set as a team adopted it. It never changes.
 *
 * @param teamId whose
 * @param version counting from 1 in the team
 * @param hash content hash
 * @param effectiveFrom first civil day decided by it
 * @param writtenAt when it was adopted
 * @param writtenBy who adopted it; absent for the one a team begins with
 * @param reason why; absent for the one a team begins with
 * @param rules the rule set
 * @param firstText whether its text is of the first rule text, read as what it becomes
 * @param becameOf the version, of the first rule text, that goes on as this one; absent
 * for all others
 */
public record RuleVersion(UUID teamId, int version, String hash, LocalDate effectiveFrom, Instant writtenAt,
		@Nullable PersonId writtenBy, @Nullable String reason, RuleSet rules, boolean firstText,
		@Nullable Integer becameOf) {
}
