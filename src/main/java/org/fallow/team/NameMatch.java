package org.fallow.team;

import java.util.List;

/** Whom of a team a code or name means. */
public sealed interface NameMatch {

	/** Nobody of this team, as far as its members can be seen. */
	record Nobody() implements NameMatch {
	}

	/**
	 * One athlete, who shares.
	 *
	 * @param member who
	 */
	record One(Roster.Entry member) implements NameMatch {
	}

	/**
	 * More than one person may be meant.
	 *
	 * @param members those of them who share, at least one
	 */
	record Several(List<Roster.Entry> members) implements NameMatch {

		/** Copies them. */
		public Several {
			members = List.copyOf(members);
		}

	}

	/** Somebody of whom nothing may be taken in; why, nobody is told. */
	record Closed() implements NameMatch {
	}

}
