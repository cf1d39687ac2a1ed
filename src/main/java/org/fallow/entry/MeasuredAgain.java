package org.fallow.entry;

import java.time.LocalDate;

/**
 * A resting heart rate measured again on the same morning. It is kept beside the reading
 * of the morning's entry and corrects nothing: both stay.
 *
 * @param day the morning, that of the recording
 * @param recorded when it became known
 * @param kind what it was measured again for
 * @param method how it was taken
 * @param posture how the athlete was placed
 * @param rhrBpm resting heart rate, 20 to 220 bpm, one decimal
 */
public record MeasuredAgain(LocalDate day, Recorded recorded, Kind kind, Method method, Posture posture,
		double rhrBpm) implements Fact {

	/**
	 * Refuses what no second measurement is.
	 * @throws IllegalArgumentException if it is of another day than the recording, no
	 * plausible heart rate, not lying after a rest, or no count where it has to be one
	 */
	public MeasuredAgain {
		if (!day.equals(recorded.on())) {
			throw new IllegalArgumentException("a morning is measured again on its own day");
		}
		if (!(rhrBpm >= MorningEntry.LOWEST_RHR && rhrBpm <= MorningEntry.HIGHEST_RHR)) {
			throw new IllegalArgumentException("resting heart rate out of range: " + rhrBpm);
		}
		if (!kind.allows(method, posture)) {
			throw new IllegalArgumentException(kind + " is not taken by " + method + " " + posture);
		}
	}

	/** What a morning is measured again for. */
	public enum Kind {

		/** A high reading: once more after lying some minutes longer. */
		RESTED,
		/** A reading nobody should have at rest: the pulse counted by finger at once. */
		COUNTED;

		/**
		 * Whether it can be taken so.
		 * @param method how
		 * @param posture how placed
		 * @return a rested one lying, a counted one over 30 or 60 seconds
		 */
		public boolean allows(Method method, Posture posture) {
			return (this == RESTED) ? posture == Posture.LYING : method.stepBpm() > 0;
		}

	}

}
