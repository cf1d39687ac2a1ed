package org.fallow.wording;

import java.io.Serializable;
import java.util.List;

/**
 * Something a page says: the key of a sentence in the message files and the values that
 * go into it, in the order of the sentence's placeholders. It can be serialized, because
 * a message for the next page waits in the session, and sessions live in the database.
 *
 * @param code key of the sentence, for example {@code reason.rhr-high}
 * @param arguments values of the placeholders: strings, numbers and dates
 */
public record Message(String code, List<Object> arguments) implements Serializable {

	/** Copies the arguments. */
	public Message {
		arguments = List.copyOf(arguments);
	}

	/**
	 * A message with its arguments.
	 * @param code key of the sentence
	 * @param arguments values of the placeholders
	 * @return the message
	 */
	public static Message of(String code, Object... arguments) {
		return new Message(code, List.of(arguments));
	}

}
