package org.fallow.platform;

import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * A reason known beforehand why Fallow cannot start. It ends the start with exit code 1
 * and one sentence, taken from {@code messages-start.properties}, on standard error.
 */
public final class StartFailure extends RuntimeException {

	private final String code;

	private final transient List<String> arguments;

	/**
	 * A failure without a deeper cause.
	 * @param code the sentence's key
	 * @param arguments what the sentence names, in the order of its placeholders
	 */
	public StartFailure(String code, String... arguments) {
		this(null, code, arguments);
	}

	/**
	 * A failure with the exception that brought it about.
	 * @param cause what went wrong, kept for a debugger and never printed
	 * @param code the sentence's key
	 * @param arguments what the sentence names, in the order of its placeholders
	 */
	public StartFailure(@Nullable Throwable cause, String code, String... arguments) {
		super(code + " " + List.of(arguments), cause);
		this.code = code;
		this.arguments = List.of(arguments);
	}

	/**
	 * The failure in words.
	 * @return one sentence for the operator
	 */
	public String sentence() {
		return StartSentences.sentence(this.code, this.arguments.toArray(String[]::new));
	}

}
