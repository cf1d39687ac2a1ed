package org.fallow.entry;

import java.time.Instant;
import java.time.LocalDate;

/**
 * When a fact became known: the instant, which orders facts, and the civil day of that
 * instant in the athlete's zone, from which on it works. A history imported for the days
 * before the athlete was in Fallow counts as recorded on the days it speaks of
 * (docs/decisions/0003).
 *
 * @param at the instant; orders facts, decides nothing else
 * @param on the civil day in the athlete's zone
 */
public record Recorded(Instant at, LocalDate on) implements Comparable<Recorded> {

	@Override
	public int compareTo(Recorded other) {
		int byDay = this.on.compareTo(other.on);
		return (byDay != 0) ? byDay : this.at.compareTo(other.at);
	}

}
