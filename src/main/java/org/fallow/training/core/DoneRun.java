package org.fallow.training.core;

import java.time.LocalDate;

import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;

/**
 * A run that was done.
 *
 * @param day civil day
 * @param minutes how long, 0 or more; not stated counts as 0, for the week, but as a run
 * @param intensity the hardest of it; absent when not stated, which counts as hard
 */
public record DoneRun(LocalDate day, int minutes, @Nullable Intensity intensity) {

	/**
	 * Whether the day counts as hard.
	 * @return true for steady and harder, and where nothing was stated
	 */
	public boolean isHard() {
		return this.intensity == null || this.intensity.compareTo(Intensity.STRIDES) > 0;
	}

}
