package org.fallow.illness.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.illness.view.Said;
import org.fallow.platform.Figures;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;

/**
 * From what was typed to values, with a problem at the field where that fails.
 */
final class Problems {

	private Problems() {
	}

	static void show(BindingResult result, List<Problem> problems) {
		for (Problem problem : problems) {
			Message said = Said.of(problem.message());
			Object[] arguments = Figures.arguments(said.arguments());
			if (has(result, problem.field())) {
				result.rejectValue(problem.field(), said.code(), arguments, said.code());
			}
			else {
				result.reject(said.code(), arguments, said.code());
			}
		}
	}

	private static boolean has(BindingResult result, String field) {
		Object target = result.getTarget();
		return target != null && Arrays.stream(target.getClass().getRecordComponents())
			.anyMatch((component) -> component.getName().equals(field));
	}

	static Optional<LocalDate> day(BindingResult result, String field, @Nullable String text) {
		try {
			return (text == null || text.isBlank()) ? Optional.empty() : Optional.of(LocalDate.parse(text.strip()));
		}
		catch (DateTimeParseException ex) {
			result.rejectValue(field, "day.unreadable");
			return Optional.empty();
		}
	}

	static <E extends Enum<E>> Optional<E> oneOf(Class<E> type, @Nullable String text) {
		for (E value : type.getEnumConstants()) {
			if (value.name().equals(text)) {
				return Optional.of(value);
			}
		}
		return Optional.empty();
	}

	static String words(@Nullable String text) {
		return (text == null) ? "" : text.strip();
	}

	static @Nullable String wordsOrNull(@Nullable String text) {
		String words = words(text);
		return words.isEmpty() ? null : words;
	}

	/** The form's own id; a form without a proper one gets a new one, so it stores. */
	static UUID requestId(@Nullable String text, UUID fresh) {
		try {
			return (text == null) ? fresh : UUID.fromString(text);
		}
		catch (IllegalArgumentException ex) {
			return fresh;
		}
	}

}
