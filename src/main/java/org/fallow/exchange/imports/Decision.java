package org.fallow.exchange.imports;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * What a coach decided of a name in a file that is nearly somebody else's.
 *
 * @param kind what
 * @param sameAs which athlete of the team it is; absent unless the kind is SAME
 */
public record Decision(Kind kind, @Nullable PersonId sameAs) {

	/** A person the team does not have yet. */
	public static final Decision NEW = new Decision(Kind.NEW, null);

	/** The lines are left out. */
	public static final Decision LEAVE = new Decision(Kind.LEAVE, null);

	/**
	 * Checks the athlete.
	 * @throws IllegalArgumentException if one is absent who is meant, or the other way
	 */
	public Decision {
		if ((kind == Kind.SAME) != (sameAs != null)) {
			throw new IllegalArgumentException("the same person is somebody of the team");
		}
	}

	/**
	 * It is somebody of the team.
	 * @param athlete who
	 * @return the decision
	 */
	public static Decision same(PersonId athlete) {
		return new Decision(Kind.SAME, athlete);
	}

	/** What is decided. */
	public enum Kind {

		/** Somebody of the team. */
		SAME,
		/** A person the team does not have yet. */
		NEW,
		/** Left out. */
		LEAVE

	}

}
