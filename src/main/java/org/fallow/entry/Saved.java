package org.fallow.entry;

import java.util.List;

import org.fallow.wording.Problem;

/**
 * What came of sending a fact.
 */
public sealed interface Saved {

	/**
	 * It is stored, and the assessment that follows from it too.
	 *
	 * @param key names the fact for later corrections: a session's or absence's key, a
	 * morning's day
	 * @param revision number of the fact among those of its key, counting from 1
	 * @param again true if this very sending was stored before, and nothing changed now
	 */
	record Stored(String key, int revision, boolean again) implements Saved {
	}

	/**
	 * Somebody, perhaps the same person in another tab, stored a newer one since the form
	 * was shown. Nothing was stored; what was typed is still the form's to show.
	 *
	 * @param revision the newest revision, to be looked at and built upon
	 */
	record AlreadyChanged(int revision) implements Saved {
	}

	/**
	 * It is not plausible, and nothing was stored.
	 *
	 * @param problems what is wrong, at least one
	 */
	record Refused(List<Problem> problems) implements Saved {

		/** Copies the problems. */
		public Refused {
			problems = List.copyOf(problems);
		}

	}

}
