package org.fallow.assess;

import java.nio.file.Path;

import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * The one thing that stopped the command: where it stands and what to say about it.
 */
final class BadInput extends RuntimeException {

	private final transient Place place;

	private final transient Message problem;

	BadInput(Place place, Message problem) {
		super(problem.code());
		this.place = place;
		this.problem = problem;
	}

	static BadInput file(Path file, String code, Object... arguments) {
		return new BadInput(new Place(file, 0, null, null), Message.of(code, arguments));
	}

	static BadInput line(Path file, long line, String code, Object... arguments) {
		return new BadInput(new Place(file, line, null, null), Message.of(code, arguments));
	}

	Place place() {
		return this.place;
	}

	Message problem() {
		return this.problem;
	}

	/**
	 * Where in which file.
	 *
	 * @param file the file
	 * @param line line the row begins on, counting from 1; 0 for the whole file
	 * @param column name of the column in the file; absent for the whole row
	 * @param value what stands there; absent for the whole row
	 */
	record Place(Path file, long line, @Nullable String column, @Nullable String value) {
	}

}
