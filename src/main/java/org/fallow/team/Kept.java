package org.fallow.team;

import org.jspecify.annotations.Nullable;

/**
 * On whose word data of an athlete are kept. It is no consent of the athlete.
 *
 * @param basis on whose
 * @param guardian which guardian, where one gave a word and is named; else absent
 */
public record Kept(Basis basis, @Nullable Guardian guardian) {

	/** On the club's record: the least that can be said. */
	public static final Kept ON_RECORD = new Kept(Basis.CLUB_RECORD, null);

	/**
	 * Checks the guardian.
	 * @throws IllegalArgumentException if one is named whose word it is not
	 */
	public Kept {
		if (guardian != null && basis != Basis.GUARDIAN_WORD) {
			throw new IllegalArgumentException("a guardian is named for a guardian's word only");
		}
	}

	/**
	 * Whether the word is enough for somebody.
	 * @param under18 whether it is for a minor, or somebody of unknown age
	 * @return false for a minor's own word
	 */
	public boolean isEnough(boolean under18) {
		return this.basis != Basis.OWN_WORD || !under18;
	}

}
