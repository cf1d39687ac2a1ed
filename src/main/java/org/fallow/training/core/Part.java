package org.fallow.training.core;

import java.util.Objects;

import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;

/**
 * One part of a session: a warm-up, a block of repeats, a cool-down. Distances come with
 * the time the coach reckons for them, so that every session has minutes.
 *
 * @param role which part
 * @param repeats how often, 1 to 100
 * @param metres distance of one repeat, 1 to 100,000; absent where it goes by time
 * @param seconds time of one repeat, 1 to 86,400; reckoned where there is a distance
 * @param intensity how hard
 * @param recoverySeconds easy running or walking between two repeats, 0 to 3,600; none
 * after the last
 */
public record Part(Role role, int repeats, @Nullable Integer metres, int seconds, Intensity intensity,
		int recoverySeconds) {

	/** Most repeats of a block. */
	public static final int MOST_REPEATS = 100;

	/** Longest distance of a repeat, metres. */
	public static final int MOST_METRES = 100_000;

	/** Longest time of a repeat, a day. */
	public static final int MOST_SECONDS = 86_400;

	/** Longest recovery, an hour. */
	public static final int MOST_RECOVERY = 3_600;

	/**
	 * Checks the ranges.
	 * @throws IllegalArgumentException if one is left, or the intensity is REST
	 */
	public Part {
		Objects.requireNonNull(role);
		require(repeats >= 1 && repeats <= MOST_REPEATS, "repeats", repeats);
		require(metres == null || (metres >= 1 && metres <= MOST_METRES), "metres", metres);
		require(seconds >= 1 && seconds <= MOST_SECONDS, "seconds", seconds);
		require(intensity != Intensity.REST, "intensity", intensity);
		require(recoverySeconds >= 0 && recoverySeconds <= MOST_RECOVERY, "recovery", recoverySeconds);
	}

	private static void require(boolean holds, String what, @Nullable Object value) {
		if (!holds) {
			throw new IllegalArgumentException(what + " out of range: " + value);
		}
	}

	/**
	 * A part without repeats.
	 * @param role which part
	 * @param seconds how long
	 * @param intensity how hard
	 * @return the part
	 */
	public static Part of(Role role, int seconds, Intensity intensity) {
		return new Part(role, 1, null, seconds, intensity, 0);
	}

	/**
	 * The running at the part's own intensity.
	 * @return seconds
	 */
	public int workSeconds() {
		return this.repeats * this.seconds;
	}

	/**
	 * All of it with the recoveries. Worked example: 6 times 60 s with 90 s between are
	 * 360 + 450 = 810 s.
	 * @return seconds
	 */
	public int totalSeconds() {
		return workSeconds() + (this.repeats - 1) * this.recoverySeconds;
	}

	/** Where in the session a part stands. */
	public enum Role {

		/** Before the blocks. */
		WARM_UP,
		/** What the session is for. */
		BLOCK,
		/** After the blocks. */
		COOL_DOWN

	}

}
