package org.fallow.account;

import java.time.Duration;

import org.fallow.wording.Message;

import org.springframework.security.core.AuthenticationException;

/**
 * A try to sign in that was not looked at, because too many before it failed. It says the
 * same for accounts that exist and for those that do not.
 */
public final class TooManyTries extends AuthenticationException {

	private static final long serialVersionUID = 1L;

	private final long seconds;

	TooManyTries(Duration wait) {
		super("too many tries");
		this.seconds = seconds(wait);
	}

	/**
	 * How long to wait.
	 * @return seconds, at least one
	 */
	public long seconds() {
		return this.seconds;
	}

	/**
	 * A sentence with the time to wait, in seconds or, from two minutes on, in minutes.
	 * @param code the sentence's key without {@code .seconds} and {@code .minutes}
	 * @param wait how long
	 * @return the sentence, rounded up
	 */
	public static Message message(String code, Duration wait) {
		long seconds = seconds(wait);
		return (seconds < 120) ? Message.of(code + ".seconds", seconds)
				: Message.of(code + ".minutes", (seconds + 59) / 60);
	}

	private static long seconds(Duration wait) {
		return Math.max(1, wait.plusMillis(999).toSeconds());
	}

}
