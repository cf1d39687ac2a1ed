package org.fallow.illness.core;

import java.util.List;

import org.fallow.rules.RuleSet;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Whether a coach may set a working level today, with what speaks against it.
 *
 * @param shut symptom-free mornings on which resting heart rate kept the gate shut
 * @param of the latest symptom-free mornings looked at
 * @param bpm the level it would be; absent if there are too few readings
 * @param own the athlete's own baseline, bpm
 * @param rules what is asked for
 * @param against codes of all that speaks against it; empty if it may be set
 */
public record LevelOffer(int shut, int of, @Nullable Double bpm, double own, RuleSet.WorkingLevel rules,
		List<String> against) {

	/** Copies the codes. */
	public LevelOffer {
		against = List.copyOf(against);
	}

	/**
	 * All that speaks against it, with the figures asked for.
	 * @return empty if it may be set
	 */
	public List<Message> refusals() {
		return this.against.stream()
			.map((code) -> Message.of("level." + code, this.shut, this.of, this.rules.shutMornings(),
					this.rules.ofMornings(), this.rules.medianMornings(), this.rules.mostDeviation()))
			.toList();
	}

	/**
	 * Whether a coach may set it.
	 * @return true if nothing speaks against it
	 */
	public boolean possible() {
		return this.against.isEmpty();
	}

}
