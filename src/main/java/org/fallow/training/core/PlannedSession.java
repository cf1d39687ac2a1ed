package org.fallow.training.core;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;

import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;

/**
 * One session of a programme.
 *
 * @param key names it among the programme's sessions; stable over changes
 * @param day civil day, where the group trains
 * @param kind what it is for
 * @param terrain what it is run on
 * @param time when the group meets; absent where everybody runs when they like
 * @param place where; empty likewise
 * @param name the coach's words; may be empty
 * @param parts in order; at least one
 */
public record PlannedSession(String key, LocalDate day, Kind kind, Terrain terrain, @Nullable LocalTime time,
		String place, String name, List<Part> parts) {

	/** Longest session, a day. */
	public static final int MOST_MINUTES = 1_440;

	private static final int SECONDS = 60;

	private static final Pattern CONTROLS = Pattern.compile("[\\p{Cc}\\u2028\\u2029]");

	/**
	 * Copies the parts and checks them.
	 * @throws IllegalArgumentException without parts, below one minute or above a day
	 */
	public PlannedSession {
		Objects.requireNonNull(key);
		Objects.requireNonNull(day);
		Objects.requireNonNull(kind);
		Objects.requireNonNull(terrain);
		parts = List.copyOf(parts);
		long seconds = parts.stream().mapToLong(Part::totalSeconds).sum();
		if (seconds < SECONDS || seconds > MOST_MINUTES * (long) SECONDS) {
			throw new IllegalArgumentException(
					"a session takes from 1 to " + MOST_MINUTES + " minutes, not " + seconds + " seconds");
		}
	}

	/**
	 * All of the session.
	 * @return whole minutes, a begun one counted
	 */
	public int minutes() {
		return ceil(this.parts.stream().mapToInt(Part::totalSeconds).sum());
	}

	/**
	 * How long is run at each intensity; recoveries are easy.
	 * @return seconds by intensity, easiest first; those not run are absent
	 */
	public Map<Intensity, Integer> secondsBy() {
		Map<Intensity, Integer> seconds = new EnumMap<>(Intensity.class);
		for (Part part : this.parts) {
			seconds.merge(part.intensity(), part.workSeconds(), Integer::sum);
			int recovery = part.totalSeconds() - part.workSeconds();
			if (recovery > 0) {
				seconds.merge(Intensity.EASY, recovery, Integer::sum);
			}
		}
		return seconds;
	}

	/**
	 * How long is run harder than easy.
	 * @return seconds
	 */
	public int secondsAboveEasy() {
		return secondsBy().entrySet()
			.stream()
			.filter((entry) -> entry.getKey().compareTo(Intensity.EASY) > 0)
			.mapToInt(Map.Entry::getValue)
			.sum();
	}

	/**
	 * The hardest of it.
	 * @return the highest intensity
	 */
	public Intensity hardest() {
		return this.parts.stream().map(Part::intensity).max(Intensity::compareTo).orElseThrow();
	}

	/**
	 * Whether it counts as a hard day: anything above strides (own reading of "hard
	 * session", common practice, no source).
	 * @return true for steady running and harder
	 */
	public boolean isHard() {
		return hardest().compareTo(Intensity.STRIDES) > 0;
	}

	/**
	 * The same session with other parts.
	 * @param changed the parts
	 * @return a copy
	 */
	public PlannedSession with(List<Part> changed) {
		return new PlannedSession(this.key, this.day, this.kind, this.terrain, this.time, this.place, this.name,
				changed);
	}

	/**
	 * Whether words can stand as a name or a place.
	 * @param words as typed
	 * @return false with a line break or any other character that controls instead of
	 * being seen
	 */
	public static boolean isOneLine(String words) {
		return !CONTROLS.matcher(words).find();
	}

	/** Whole minutes of some seconds, a begun one counted. */
	static int ceil(int seconds) {
		return Math.floorDiv(seconds + SECONDS - 1, SECONDS);
	}

	/** What a session is for. */
	public enum Kind {

		/** An easy run. */
		EASY_RUN,
		/** The week's long run. */
		LONG_RUN,
		/** A key session: what the week is built round. */
		KEY_SESSION,
		/** A test. */
		TEST,
		/** A race. */
		RACE;

		/**
		 * Whether missing it matters.
		 * @return true for all but easy runs
		 */
		public boolean isKey() {
			return this != EASY_RUN;
		}

	}

	/** What is run on. */
	public enum Terrain {

		FLAT, HILL, TRACK, TREADMILL

	}

}
