package org.fallow.contact;

import java.util.List;

import org.fallow.wording.Problem;

/** Words as people type them into a field. */
final class ContactText {

	/** Longest note or message, in characters as people count them, not UTF-16 units. */
	static final int LONGEST = 1000;

	private ContactText() {
	}

	/** Without space around it, its lines ended by a line feed. */
	static String plain(String typed) {
		return typed.replace("\r\n", "\n").replace('\r', '\n').strip();
	}

	/** Adds a problem for words that are missing, too long or that no column can hold. */
	static void check(List<Problem> problems, String field, String words) {
		int length = words.codePointCount(0, words.length());
		if (words.isBlank()) {
			problems.add(Problem.of(field, "entry.words.missing"));
		}
		else if (length > LONGEST) {
			problems.add(Problem.of(field, "words.long", LONGEST, length));
		}
		if (words.indexOf('\0') >= 0) {
			problems.add(Problem.of(field, "entry.words.unprintable"));
		}
	}

}
