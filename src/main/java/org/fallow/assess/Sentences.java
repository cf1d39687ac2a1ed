package org.fallow.assess;

import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.ResourceBundle;

import org.fallow.wording.Message;

/**
 * Turns messages into sentences from the same file as the pages, without their framework.
 */
final class Sentences {

	static final String BUNDLE = "messages";

	private static final ResourceBundle SENTENCES = ResourceBundle.getBundle(BUNDLE);

	private Sentences() {
	}

	static String of(String code, Object... arguments) {
		return of(Message.of(code, arguments));
	}

	static String of(Message message) {
		if (!SENTENCES.containsKey(message.code())) {
			return message.code() + " " + message.arguments();
		}
		List<Object> arguments = new ArrayList<>();
		for (Object argument : message.arguments()) {
			arguments.add((argument instanceof Message inner) ? of(inner) : argument);
		}
		return new MessageFormat(SENTENCES.getString(message.code()), SENTENCES.getLocale())
			.format(arguments.toArray());
	}

	/** What stopped the command, with its place: one line. */
	static String of(BadInput stopped) {
		BadInput.Place place = stopped.place();
		String line = String.valueOf(place.line());
		String where = (place.line() == 0) ? of("assess.at.file", place.file()) : (place.column() == null)
				? of("assess.at.line", place.file(), line) : of("assess.at.column", place.file(), line, place.column());
		String what = of(stopped.problem());
		return (place.value() == null || place.value().isEmpty()) ? of("assess.error", where, what)
				: of("assess.error.value", where, what, onOneLine(place.value()));
	}

	private static String onOneLine(String value) {
		return value.replaceAll("\\p{Cntrl}+", " ");
	}

}
