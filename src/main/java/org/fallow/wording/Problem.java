package org.fallow.wording;

/**
 * What is wrong with one field of what was sent.
 *
 * @param field the field's name, as the form or file calls it
 * @param message what to say about it
 */
public record Problem(String field, Message message) {

	/**
	 * A problem with its message.
	 * @param field the field's name
	 * @param code key of the sentence
	 * @param arguments values of the placeholders
	 * @return the problem
	 */
	public static Problem of(String field, String code, Object... arguments) {
		return new Problem(field, Message.of(code, arguments));
	}

}
