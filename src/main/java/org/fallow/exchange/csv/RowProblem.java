package org.fallow.exchange.csv;

import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What is wrong with a row, or worth a look.
 *
 * @param line line of the file the row begins on, counting from 1
 * @param field the field in question; absent if it is the whole row
 * @param value what stands there, as plain text, never longer than 200 characters
 * @param reason what to say about it
 * @param notice true where the row went in all the same
 */
public record RowProblem(long line, @Nullable ImportField field, @Nullable String value, Message reason,
		boolean notice) {

	private static final int LONGEST = 200;

	/** Cuts the value to what can be shown. */
	public RowProblem {
		if (value != null && value.length() > LONGEST) {
			value = value.substring(0, LONGEST);
		}
	}

	/**
	 * A row that did not go in.
	 * @param line line of the file
	 * @param field the field; absent if it is the whole row
	 * @param value what stands there
	 * @param reason why not
	 * @return the problem
	 */
	public static RowProblem refused(long line, @Nullable ImportField field, @Nullable String value, Message reason) {
		return new RowProblem(line, field, value, reason, false);
	}

	/**
	 * A row that went in and should be looked at.
	 * @param line line of the file
	 * @param field the field
	 * @param value what stands there
	 * @param reason what is unusual
	 * @return the notice
	 */
	public static RowProblem notice(long line, ImportField field, String value, Message reason) {
		return new RowProblem(line, field, value, reason, true);
	}

}
