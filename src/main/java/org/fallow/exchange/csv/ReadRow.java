package org.fallow.exchange.csv;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.NewMorning;
import org.jspecify.annotations.Nullable;

/**
 * What a row of a file says.
 *
 * @param line line of the file the row begins on, counting from 1
 * @param person who: code or name as the file has it
 * @param group training group; absent if the file does not say
 * @param birthDate absent if the file does not say
 * @param morning the morning; absent if there are problems
 * @param problems why the row cannot go in; empty if it can
 */
public record ReadRow(long line, String person, @Nullable String group, @Nullable LocalDate birthDate,
		@Nullable NewMorning morning, List<RowProblem> problems) {

	/** Copies the problems. */
	public ReadRow {
		problems = List.copyOf(problems);
	}

	/**
	 * The morning of a row that can go in.
	 * @return the morning
	 * @throws IllegalStateException if the row has problems
	 */
	public NewMorning goodMorning() {
		if (this.morning == null) {
			throw new IllegalStateException("line " + this.line + " has problems");
		}
		return this.morning;
	}

}
