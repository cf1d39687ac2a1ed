package org.fallow.team;

import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * What an athlete agreed to, or took back.
 *
 * @param kind what was said
 * @param teamId whose coaches it is about
 * @param at when
 * @param by name of who said so; absent where it is not to be seen
 * @param basis on whose word data are kept; absent unless the kind is KEPT
 * @param guardian name of the guardian who agreed; absent for an adult
 * @param guardianRole what the guardian is to the athlete; absent without one
 */
public record Consent(Kind kind, UUID teamId, Instant at, @Nullable String by, @Nullable Basis basis,
		@Nullable String guardian, @Nullable String guardianRole) {

	/** What was said. */
	public enum Kind {

		/** The athlete agrees that the team's coaches see the data. */
		GIVEN,
		/** Noted in earlier versions for whoever was added: no consent. */
		STATED,
		/** A coach keeps data on a word that is no consent given here. */
		KEPT,
		/** The athlete takes it back and stays in the team. */
		WITHDRAWN,
		/** The athlete leaves the team. */
		LEFT

	}

}
