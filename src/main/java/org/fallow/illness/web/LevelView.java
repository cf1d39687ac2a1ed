package org.fallow.illness.web;

import java.util.List;

import org.fallow.illness.core.LevelOffer;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Whether a working level may be set, as it is read.
 *
 * @param shut symptom-free mornings on which resting heart rate kept the gate shut
 * @param of the latest symptom-free mornings looked at
 * @param bpm the level it would be; absent if there are too few readings
 * @param own the athlete's own baseline, bpm
 * @param against all that speaks against it
 */
public record LevelView(int shut, int of, @Nullable Double bpm, double own, List<Message> against) {

	static @Nullable LevelView of(@Nullable LevelOffer offer) {
		if (offer == null) {
			return null;
		}
		return new LevelView(offer.shut(), offer.of(), offer.bpm(), offer.own(), offer.refusals());
	}

}
