package org.fallow.entry;

import java.util.List;

import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Checks what people write in their own words.
 */
public final class Words {

	/** Longest note, characters. */
	public static final int LONGEST = 2000;

	private Words() {
	}

	/**
	 * Adds a problem for words that are too long or that no text column can hold.
	 * @param problems takes it
	 * @param field name of the field
	 * @param words what was written; absent is fine
	 */
	public static void check(List<Problem> problems, String field, @Nullable String words) {
		if (words != null && words.length() > LONGEST) {
			problems.add(Problem.of(field, "entry.words.long", LONGEST));
		}
		if (words != null && words.indexOf('\0') >= 0) {
			problems.add(Problem.of(field, "entry.words.unprintable"));
		}
	}

	/**
	 * Adds a problem where words are needed and missing, too.
	 * @param problems takes it
	 * @param field name of the field
	 * @param words what was written
	 */
	public static void require(List<Problem> problems, String field, String words) {
		if (words.isBlank()) {
			problems.add(Problem.of(field, "entry.words.missing"));
		}
		check(problems, field, words);
	}

}
