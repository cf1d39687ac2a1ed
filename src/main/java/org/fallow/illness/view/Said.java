package org.fallow.illness.view;

import java.util.List;
import java.util.regex.Pattern;

import org.fallow.platform.Figures;
import org.fallow.wording.Message;
import org.springframework.context.support.DefaultMessageSourceResolvable;

/**
 * Messages ready for a page: a code among the arguments becomes the name that the message
 * files have for it, a decimal as text the reader's way of writing it.
 */
public final class Said {

	private static final Pattern CODE = Pattern.compile("[A-Z][A-Z0-9_]+");

	private static final List<String> NAMES = List.of("clearance.", "symptom.", "after.", "kind.", "feels.", "mark.",
			"cause.", "intensity.", "severity.", "method.", "posture.");

	private Said() {
	}

	/**
	 * A message whose codes are names.
	 * @param message as decided
	 * @return the same message, ready to be said
	 */
	public static Message of(Message message) {
		return new Message(message.code(), message.arguments().stream().map(Said::named).toList());
	}

	/**
	 * Messages whose codes are names.
	 * @param messages as decided
	 * @return the same messages in the same order
	 */
	public static List<Message> all(List<Message> messages) {
		return messages.stream().map(Said::of).toList();
	}

	private static Object named(Object argument) {
		if (argument instanceof String text && CODE.matcher(text).matches()) {
			return new DefaultMessageSourceResolvable(NAMES.stream().map((name) -> name + text).toArray(String[]::new));
		}
		return Figures.argument(argument);
	}

}
