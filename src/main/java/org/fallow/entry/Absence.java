package org.fallow.entry;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * Days away for another reason than illness. A later absence with the same key corrects
 * it, for example by giving it an end.
 *
 * @param key names the absence among the athlete's; stable over corrections
 * @param day first day away
 * @param until last day away, inclusive; absent while it is open
 * @param recorded when it became known
 * @param kind injury, holiday or other
 * @param note the athlete's or coach's words
 */
public record Absence(String key, LocalDate day, @Nullable LocalDate until, Recorded recorded, AbsenceKind kind,
		@Nullable String note) implements Fact {

	/**
	 * Checks the order of the days.
	 * @throws IllegalArgumentException if the last day is before the first
	 */
	public Absence {
		if (until != null && until.isBefore(day)) {
			throw new IllegalArgumentException("an absence cannot end before it begins");
		}
	}

	/**
	 * Whether the day is among the days away.
	 * @param date the day in question
	 * @return true if it is
	 */
	public boolean covers(LocalDate date) {
		return !date.isBefore(this.day) && (this.until == null || !date.isAfter(this.until));
	}

}
