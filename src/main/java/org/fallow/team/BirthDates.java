package org.fallow.team;

import java.time.LocalDate;
import java.util.Optional;

import org.fallow.wording.Message;

/**
 * Which days can be the birth date of somebody who is to run: none in the future, none
 * more than {@value #OLDEST} years ago (nobody lived much longer; from memory), where a
 * slip such as the year 26 for 2006 lies. Worked example: on 18 March 2026 the first day
 * taken is 18 March 1906.
 */
public final class BirthDates {

	/** Years of age that nobody has who joins a team. */
	public static final int OLDEST = 120;

	private BirthDates() {
	}

	/**
	 * What is wrong with a birth date.
	 * @param born the date
	 * @param today the civil day
	 * @return the sentence; empty where it can be one
	 */
	public static Optional<Message> problem(LocalDate born, LocalDate today) {
		if (born.isAfter(today)) {
			return Optional.of(Message.of("people.born.future"));
		}
		return born.isBefore(today.minusYears(OLDEST)) ? Optional.of(Message.of("people.born.long-ago", OLDEST))
				: Optional.empty();
	}

}
