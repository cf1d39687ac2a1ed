package org.fallow.entry;

import java.time.LocalDate;
import java.util.List;

import org.fallow.wording.Problem;

/**
 * Checks the day a fact speaks of.
 */
public final class Days {

	/** How many days back a page takes a fact. */
	public static final int BACK = 60;

	/** The first day a file may speak of. */
	public static final LocalDate EARLIEST = LocalDate.of(2000, 1, 1);

	private Days() {
	}

	/**
	 * The first day a fact may speak of.
	 * @param today the athlete's today
	 * @param source by which way the fact comes
	 * @return the day, inclusive
	 */
	public static LocalDate earliest(LocalDate today, Source source) {
		return (source == Source.PAGE) ? today.minusDays(BACK) : EARLIEST;
	}

	/**
	 * Adds a problem for a day of the future or of too long ago.
	 * @param problems takes it
	 * @param field name of the field
	 * @param day the day in question
	 * @param today the athlete's today
	 * @param source by which way the fact comes
	 */
	public static void check(List<Problem> problems, String field, LocalDate day, LocalDate today, Source source) {
		if (day.isAfter(today)) {
			problems.add(Problem.of(field, "entry.day.future", day, today));
		}
		LocalDate earliest = earliest(today, source);
		if (day.isBefore(earliest)) {
			problems.add(Problem.of(field, "entry.day.too-old", day, earliest));
		}
	}

}
