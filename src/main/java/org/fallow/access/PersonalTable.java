package org.fallow.access;

import org.jspecify.annotations.Nullable;

/**
 * A table with data of people.
 *
 * @param name of the table
 * @param column that says whose a row is: a person's id, or where {@code through} is
 * given the key of a row there
 * @param through the table that knows whose the row is; absent where this table does
 * @param nature what kind of data it is
 */
public record PersonalTable(String name, String column, @Nullable String through, Nature nature) {

	/**
	 * A table whose rows name the person.
	 * @param name of the table
	 * @param column holds the person's id
	 * @param nature what kind of data it is
	 * @return the table
	 */
	public static PersonalTable of(String name, String column, Nature nature) {
		return new PersonalTable(name, column, null, nature);
	}

	/**
	 * A table whose rows belong to those of another table.
	 * @param name of the table
	 * @param column points at the other table
	 * @param through the other table
	 * @param nature what kind of data it is
	 * @return the table
	 */
	public static PersonalTable through(String name, String column, String through, Nature nature) {
		return new PersonalTable(name, column, through, nature);
	}

	/** What kind of data a table holds. */
	public enum Nature {

		/** The person's own: theirs to have and to have erased. */
		OWN,
		/** Computed from what is their own: goes with it, and could be computed again. */
		COMPUTED,
		/** To get in with: goes with the person, and is handed to nobody. */
		SIGN_IN,
		/** Who did what, which others rely on too: the person may have a copy. */
		RECORD

	}

}
