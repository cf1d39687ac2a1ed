package org.fallow.rules;

import java.time.Instant;
import java.util.UUID;

import org.fallow.access.PersonId;

/**
 * A copy of a rule set that a coach changes and tries before it is adopted. What is
 * stored is always within the safe bounds.
 *
 * @param id for links
 * @param teamId whose
 * @param basedOn version it was copied from
 * @param rules the numbers as they stand
 * @param state whether it can still be changed
 * @param startedBy who began it
 * @param startedAt when
 * @param changedAt when it was last changed
 * @param changes how often it was changed
 */
public record RuleDraft(UUID id, UUID teamId, int basedOn, RuleSet rules, State state, PersonId startedBy,
		Instant startedAt, Instant changedAt, int changes) {

	/**
	 * Whether it can still be changed and adopted.
	 * @return true until it is adopted or discarded
	 */
	public boolean isOpen() {
		return this.state == State.OPEN;
	}

	/** What became of it. */
	public enum State {

		OPEN, ADOPTED, DISCARDED

	}

}
