package org.fallow.illness.core;

import org.fallow.entry.Posture;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of readings that no body should have at rest, and of measuring again.
 */
public final class FastAtRest {

	/**
	 * From here on, lying or sitting, red flags and a count by finger are asked at once,
	 * bpm [adults at rest 60 to 100, textbook, from memory; the figure itself own].
	 */
	public static final double COUNT_BPM = 120;

	/** The same standing, bpm [own]. */
	public static final double COUNT_STANDING_BPM = 140;

	/** Minutes to lie before a high reading is measured again [own]. */
	public static final int LIE_MINUTES = 5;

	/**
	 * Minutes after the reading was recorded by which it has to be measured again, by
	 * finger or lying: what comes later is no morning's reading any more [own].
	 */
	public static final int WITHIN_MINUTES = 120;

	/** The most a clinician's own figure for a person can be, lying or sitting, bpm. */
	public static final double MOST_OWN_BPM = COUNT_BPM - 1;

	/** The same standing, bpm. */
	public static final double MOST_OWN_STANDING_BPM = COUNT_STANDING_BPM - 1;

	private FastAtRest() {
	}

	/**
	 * From which reading on it is counted by finger.
	 * @param posture how the athlete was placed
	 * @return bpm
	 */
	public static double countFrom(Posture posture) {
		return (posture == Posture.STANDING) ? COUNT_STANDING_BPM : COUNT_BPM;
	}

	/**
	 * The most a clinician's own figure can be.
	 * @param posture how the readings are taken
	 * @return bpm
	 */
	public static double mostOwn(Posture posture) {
		return (posture == Posture.STANDING) ? MOST_OWN_STANDING_BPM : MOST_OWN_BPM;
	}

	/** Whether a reading has to be counted by finger. */
	static boolean isCounted(@Nullable Double bpm, @Nullable Posture posture) {
		return bpm != null && posture != null && bpm >= countFrom(posture);
	}

}
