package org.fallow.account;

import java.util.List;
import java.util.Optional;

import com.nulabinc.zxcvbn.Zxcvbn;
import org.fallow.wording.Message;

import org.springframework.stereotype.Component;

/**
 * What a chosen password has to be: long enough, and not among those a guesser tries
 * first. Nothing is asked about kinds of characters.
 */
@Component
class PasswordRules {

	/** Only so much is looked at, since the look takes longer the more there is. */
	private static final int LOOKED_AT = 100;

	/** At least about a hundred million guesses, as the estimator counts them. */
	private static final int ENOUGH = 3;

	/**
	 * What is wrong with a password.
	 * @param password as typed
	 * @param known words a guesser would try for this person: names
	 * @return the reason; empty when it will do
	 */
	Optional<Message> problem(String password, String... known) {
		if (!isShortEnough(password)) {
			return Optional.of(Message.of("password.long", Accounts.LONGEST_PASSWORD));
		}
		if (password.codePointCount(0, password.length()) < Accounts.SHORTEST_PASSWORD) {
			return Optional.of(Message.of("password.short", Accounts.SHORTEST_PASSWORD));
		}
		String looked = password.substring(0, Math.min(password.length(), LOOKED_AT));
		boolean enough = Estimator.IT.measure(looked, words(known)).getScore() >= ENOUGH;
		return enough ? Optional.empty() : Optional.of(Message.of("password.common"));
	}

	/** Whether it is short enough to be hashed at all. */
	static boolean isShortEnough(String password) {
		return password.codePointCount(0, password.length()) <= Accounts.LONGEST_PASSWORD;
	}

	/** The names and their parts: of an address what stands before the at sign, too. */
	private static List<String> words(String... known) {
		return List.of(known)
			.stream()
			.flatMap((name) -> java.util.stream.Stream.concat(java.util.stream.Stream.of(name),
					java.util.stream.Stream.of(name.split("[@.\\s]+"))))
			.filter((word) -> word.length() > 2)
			.toList();
	}

	/** Read when the first password is chosen: its word lists are large. */
	private static final class Estimator {

		static final Zxcvbn IT = new Zxcvbn();

	}

}
