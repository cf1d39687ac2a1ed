package org.fallow.board.web;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.Version;

/**
 * A session of the day with everybody of its group.
 *
 * @param group name of the group
 * @param session as programmed
 * @param parts its parts in one line
 * @param minutes all of it
 * @param lines everybody, those who run most of it first
 */
public record RollSession(String group, PlannedSession session, String parts, int minutes, List<RollLine> lines) {

	/** Copies the lines. */
	public RollSession {
		lines = List.copyOf(lines);
	}

	/**
	 * How many run which version.
	 * @return those that anybody runs, most of the session first
	 */
	public List<Count> counts() {
		return Arrays.stream(Version.values())
			.sorted(Comparator.reverseOrder())
			.map((version) -> new Count(version,
					this.lines.stream().filter((line) -> line.version() == version).count()))
			.filter((count) -> count.many() > 0)
			.toList();
	}

	/**
	 * How many run a version.
	 *
	 * @param version which
	 * @param many how many
	 */
	public record Count(Version version, long many) {
	}

}
