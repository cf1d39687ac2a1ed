package org.fallow.access;

import java.util.Objects;
import java.util.UUID;

/**
 * Names one person: an athlete, a coach, a clinician, or a named job's principal.
 *
 * @param value the id, as stored
 */
public record PersonId(UUID value) {

	public PersonId {
		Objects.requireNonNull(value, "value");
	}

	/**
	 * Draws the id of a new person.
	 * @return an id nobody has yet
	 */
	public static PersonId next() {
		return new PersonId(Ids.next());
	}

	/**
	 * Reads an id from its text.
	 * @param text 36 characters, as {@link #toString()} writes them
	 * @return the id
	 * @throws IllegalArgumentException when the text is no id
	 */
	public static PersonId parse(String text) {
		if (text.length() != 36) {
			throw new IllegalArgumentException("not an id");
		}
		return new PersonId(UUID.fromString(text));
	}

	@Override
	public String toString() {
		return this.value.toString();
	}

}
