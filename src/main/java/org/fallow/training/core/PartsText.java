package org.fallow.training.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.fallow.rules.Intensity;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A session's parts in one line, as a coach would jot them down. Worked example:
 * {@code 15 min easy; 6 x 800 m in 3:10 vo2max, 90 s between; 10 min easy} is a warm-up,
 * a block of six and a cool-down.
 * <p>
 * Parts are parted by semicolons. Each has, in this order, how often ({@code 6 x}), how
 * long ({@code 20 min}, {@code 45 s}, {@code 1:30} for minutes and seconds, {@code 1 h},
 * or a distance with the time reckoned for it), how hard, and after a comma what lies
 * between two repeats. A first easy part before others is the warm-up, a last one the
 * cool-down.
 * <p>
 * The words of all languages Fallow speaks are understood, whoever types them; what is
 * written for files is English.
 */
public final class PartsText {

	/** Longest line that is read, characters. */
	public static final int LONGEST = 500;

	private static final int MOST_PARTS = 40;

	private static final int MINUTE = 60;

	private static final int HOUR = 3_600;

	private static final int KILOMETRE = 1_000;

	private static final String TIME = "(?:\\d{1,4}:\\d{2}|\\d{1,5} ?(?:h|min|s))";

	private static final Pattern PART = Pattern.compile(
			"(?:(?<repeats>\\d{1,4}) ?[x×] ?)?(?:(?<distance>\\d{1,6}(?:[.,]\\d{1,3})?) ?(?<unit>m|km) in )?(?<time>"
					+ TIME + ") (?<intensity>[a-zü0-9 ]+?)(?:, ?(?<between>" + TIME + ") (?:between|dazwischen))?");

	private static final Map<String, Intensity> GERMAN = Map.of("locker", Intensity.EASY, "steigerungen",
			Intensity.STRIDES, "zügig", Intensity.STEADY, "wettkampftempo", Intensity.RACE_PACE, "schwelle",
			Intensity.THRESHOLD, "anaerob", Intensity.ANAEROBIC);

	private PartsText() {
	}

	/**
	 * Reads a line.
	 * @param line as typed; case and blanks do not matter
	 * @return the parts, or what is wrong and where
	 */
	public static Reading read(String line) {
		String text = line.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
		if (text.isEmpty()) {
			return Reading.wrong(Message.of("parts.none"));
		}
		String[] pieces = text.split(" ?; ?");
		if (text.length() > LONGEST || pieces.length > MOST_PARTS || pieces.length == 0) {
			return Reading.wrong(Message.of("parts.long", LONGEST, MOST_PARTS));
		}
		List<Part> parts = new ArrayList<>();
		for (int i = 0; i < pieces.length; i++) {
			Part part = part(pieces[i]);
			if (part == null) {
				return Reading.wrong(Message.of("parts.unreadable", i + 1, pieces[i]));
			}
			parts.add(part);
		}
		return new Reading(withRoles(parts), null);
	}

	private static @Nullable Part part(String piece) {
		Matcher found = PART.matcher(piece);
		Intensity intensity = found.matches() ? intensity(found.group("intensity")) : null;
		if (intensity == null) {
			return null;
		}
		String repeats = found.group("repeats");
		String between = found.group("between");
		try {
			return new Part(Part.Role.BLOCK, (repeats == null) ? 1 : Integer.parseInt(repeats), metres(found),
					seconds(found.group("time")), intensity, (between == null) ? 0 : seconds(between));
		}
		catch (IllegalArgumentException ex) {
			return null;
		}
	}

	private static @Nullable Integer metres(Matcher found) {
		String distance = found.group("distance");
		if (distance == null) {
			return null;
		}
		double number = Double.parseDouble(distance.replace(',', '.'))
				* (found.group("unit").equals("km") ? KILOMETRE : 1);
		return (int) Math.round(number);
	}

	private static int seconds(String time) {
		int colon = time.indexOf(':');
		if (colon > 0) {
			int seconds = Integer.parseInt(time.substring(colon + 1));
			if (seconds >= MINUTE) {
				throw new IllegalArgumentException("seconds out of range: " + seconds);
			}
			return Integer.parseInt(time.substring(0, colon)) * MINUTE + seconds;
		}
		int number = Integer.parseInt(time.replaceAll("[^0-9]", ""));
		return number * (time.endsWith("h") ? HOUR : time.endsWith("min") ? MINUTE : 1);
	}

	private static @Nullable Intensity intensity(String word) {
		for (Intensity intensity : Intensity.values()) {
			if (intensity != Intensity.REST && word(intensity).equals(word)) {
				return intensity;
			}
		}
		return GERMAN.get(word);
	}

	private static List<Part> withRoles(List<Part> parts) {
		if (parts.size() == 1) {
			return parts;
		}
		List<Part> named = new ArrayList<>(parts);
		int last = parts.size() - 1;
		if (isPlainEasy(parts.get(0))) {
			named.set(0, role(parts.get(0), Part.Role.WARM_UP));
		}
		if (isPlainEasy(parts.get(last))) {
			named.set(last, role(parts.get(last), Part.Role.COOL_DOWN));
		}
		return named;
	}

	private static boolean isPlainEasy(Part part) {
		return part.intensity() == Intensity.EASY && part.repeats() == 1;
	}

	private static Part role(Part part, Part.Role role) {
		return new Part(role, part.repeats(), part.metres(), part.seconds(), part.intensity(), part.recoverySeconds());
	}

	/**
	 * Writes parts as they can be read again.
	 * @param parts a session's
	 * @return one line
	 */
	public static String write(List<Part> parts) {
		return parts.stream().map(PartsText::write).collect(Collectors.joining("; "));
	}

	private static String write(Part part) {
		StringBuilder text = new StringBuilder();
		if (part.repeats() > 1) {
			text.append(part.repeats()).append(" x ");
		}
		if (part.metres() != null) {
			text.append(part.metres()).append(" m in ");
		}
		text.append(time(part.seconds())).append(' ').append(word(part.intensity()));
		if (part.recoverySeconds() > 0) {
			text.append(", ").append(time(part.recoverySeconds())).append(" between");
		}
		return text.toString();
	}

	/**
	 * A time as it is written in a line.
	 * @param seconds 1 or more
	 * @return for example {@code 20 min}, {@code 45 s} or {@code 3:10}
	 */
	public static String time(int seconds) {
		if (seconds % MINUTE == 0) {
			return seconds / MINUTE + " min";
		}
		return (seconds < 2 * MINUTE) ? seconds + " s"
				: String.format(Locale.ROOT, "%d:%02d", seconds / MINUTE, seconds % MINUTE);
	}

	/**
	 * An intensity in the trade's words, as a line has it.
	 * @param intensity which
	 * @return for example {@code race pace}
	 */
	public static String word(Intensity intensity) {
		return intensity.name().toLowerCase(Locale.ROOT).replace('_', ' ');
	}

	/**
	 * What came of reading a line.
	 *
	 * @param parts the parts; empty where something is wrong
	 * @param problem what is wrong; absent where nothing is
	 */
	public record Reading(List<Part> parts, @Nullable Message problem) {

		/** Copies the parts. */
		public Reading {
			parts = List.copyOf(parts);
		}

		static Reading wrong(Message problem) {
			return new Reading(List.of(), problem);
		}

	}

}
