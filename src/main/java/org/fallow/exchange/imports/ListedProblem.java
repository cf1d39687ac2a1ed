package org.fallow.exchange.imports;

import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A row that was refused, or that is worth a look.
 *
 * @param line line of the file the row begins on, counting from 1
 * @param column the column's name in the file; absent where it is the row
 * @param value what stands there, as plain text
 * @param reason what to say about it
 * @param notice true where the row went in all the same
 */
public record ListedProblem(long line, @Nullable String column, String value, Message reason, boolean notice) {
}
