package org.fallow.illness.core;

import java.time.LocalDate;

/**
 * Days in a row, half-open.
 *
 * @param from first day, inclusive
 * @param to last day, exclusive
 */
public record DayRange(LocalDate from, LocalDate to) {

	boolean contains(LocalDate day) {
		return !day.isBefore(this.from) && day.isBefore(this.to);
	}

}
