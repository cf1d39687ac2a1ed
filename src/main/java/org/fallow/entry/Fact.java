package org.fallow.entry;

import java.time.LocalDate;

/**
 * Something known about an athlete: it speaks of a day and was recorded at an instant.
 * Facts are only ever added; a correction is a later fact about the same thing.
 */
public interface Fact {

	/**
	 * The earliest civil day the fact speaks of; it changes nothing before it.
	 * @return the day, in the athlete's zone
	 */
	LocalDate day();

	/**
	 * When the fact became known.
	 * @return instant and civil day
	 */
	Recorded recorded();

}
