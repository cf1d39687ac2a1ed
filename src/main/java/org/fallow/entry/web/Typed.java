package org.fallow.entry.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.entry.Submission;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * From typed text to values; what cannot be read becomes a problem at its field.
 */
final class Typed {

	private Typed() {
	}

	static String words(@Nullable String text) {
		return (text == null) ? "" : text.strip();
	}

	static @Nullable String wordsOrNull(@Nullable String text) {
		String words = words(text);
		return words.isEmpty() ? null : words;
	}

	static <E extends Enum<E>> Optional<E> oneOf(Class<E> type, @Nullable String text) {
		return Arrays.stream(type.getEnumConstants()).filter((value) -> value.name().equals(text)).findFirst();
	}

	/** A number with a decimal point or a decimal comma, whatever the page's language. */
	static @Nullable Double number(@Nullable String text, String field, List<Problem> problems) {
		String typed = words(text);
		if (typed.isEmpty()) {
			return null;
		}
		if (typed.matches("-?\\d{1,6}([.,]\\d{1,6})?")) {
			return Double.valueOf(typed.replace(',', '.'));
		}
		problems.add(Problem.of(field, "typed.no-number"));
		return null;
	}

	/**
	 * Intervals with decimal points. No interval has less than three digits, so a comma
	 * with one or two digits after it is a decimal comma and none between two intervals.
	 */
	static String intervals(String text) {
		return text.replaceAll("(?<=\\d{3}),(\\d{1,2})(?!\\d)", ".$1");
	}

	static Optional<LocalDate> day(@Nullable String text, String field, List<Problem> problems) {
		try {
			return Optional.of(LocalDate.parse(words(text)));
		}
		catch (DateTimeException ex) {
			problems.add(Problem.of(field, "day.unreadable"));
			return Optional.empty();
		}
	}

	/** The form's own id; a form without a proper one counts as a new sending. */
	static UUID requestId(@Nullable String text) {
		try {
			return (text == null) ? Submission.newRequestId() : UUID.fromString(text);
		}
		catch (IllegalArgumentException ex) {
			return Submission.newRequestId();
		}
	}

}
