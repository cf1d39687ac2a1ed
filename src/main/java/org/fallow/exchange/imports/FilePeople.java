package org.fallow.exchange.imports;

import java.util.List;

import org.fallow.team.Roster;

/**
 * Whom a file names, and whom of them the team has.
 *
 * @param recognised how many names are plainly somebody's of the team
 * @param spelled recognised names the team writes otherwise, some of them
 * @param near names that are nearly somebody else's, in the order of the file's names
 * @param nearLeftOff how many more of those there are
 * @param unknown names of nobody in the team
 * @param refused names that may mean several people, or that cannot be taken in
 * @param emptyTeam whether the team has nobody yet
 */
public record FilePeople(int recognised, List<String> spelled, List<Near> near, int nearLeftOff, Names unknown,
		Names refused, boolean emptyTeam) {

	/** Copies the lists. */
	public FilePeople {
		spelled = List.copyOf(spelled);
		near = List.copyOf(near);
	}

	/**
	 * Whether there is anything to ask before the import runs.
	 * @return true if some names are nobody's, or nearly somebody's
	 */
	public boolean asks() {
		return !this.near.isEmpty() || this.unknown.count() > 0;
	}

	/**
	 * Some names of many.
	 *
	 * @param listed the first of them
	 * @param more how many are not listed
	 */
	public record Names(List<String> listed, int more) {

		/** Copies the names. */
		public Names {
			listed = List.copyOf(listed);
		}

		static Names of(List<String> all, int most) {
			List<String> listed = all.subList(0, Math.min(most, all.size()));
			return new Names(listed, all.size() - listed.size());
		}

		/**
		 * How many names they are.
		 * @return with those not listed
		 */
		public int count() {
			return this.listed.size() + this.more;
		}

	}

	/**
	 * A name that is nearly somebody's.
	 *
	 * @param token stands for the name in a form
	 * @param name as the file has it
	 * @param inTeam members of the team who are named nearly so
	 * @param inFile other names of the file, of nobody in the team, that are nearly the
	 * same
	 */
	public record Near(String token, String name, List<Roster.Entry> inTeam, List<String> inFile) {

		/** Copies the lists. */
		public Near {
			inTeam = List.copyOf(inTeam);
			inFile = List.copyOf(inFile);
		}

	}

}
