package org.fallow.illness.web;

import org.fallow.illness.core.Spoken;
import org.jspecify.annotations.Nullable;

/**
 * A coach's decision, as typed; one form type for all kinds.
 *
 * @param ceiling the most allowed, for being stricter
 * @param until last day, for being stricter
 * @param reason why
 * @param who the clinician's name, for a working level; of whoever's word a ceiling names
 * @param role the clinician's role, for a working level
 * @param word what the clinician said, for a working level
 * @param wordBy CLINICIAN or GUARDIAN where a ceiling or its lifting names such a word
 * @param names the ceiling that is lifted
 * @param able true if the athlete said to feel able
 * @param eating true if the athlete said to eat normally
 * @param requestId this form's sending
 */
public record DecisionForm(@Nullable String ceiling, @Nullable String until, @Nullable String reason,
		@Nullable String who, @Nullable String role, @Nullable String word, @Nullable String wordBy,
		@Nullable String names, @Nullable String able, @Nullable String eating, @Nullable String requestId) {

	static DecisionForm of(String requestId) {
		return new DecisionForm(null, null, null, null, null, null, null, null, null, null, requestId);
	}

	/** The word it names; null where it is the coach's own. */
	@Nullable Spoken spoken() {
		return Problems.oneOf(Spoken.By.class, this.wordBy)
			.map((by) -> new Spoken(by, Problems.words(this.who)))
			.orElse(null);
	}

}
