package org.fallow.account;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;

import org.springframework.stereotype.Component;

/**
 * The one-time code that proves that whoever sets Fallow up can read its log. It lives in
 * memory only; each start draws another.
 */
@Component
class SetUpCode {

	private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

	private static final SecureRandom RANDOM = new SecureRandom();

	private final String code = draw();

	/** Draws 16 letters in groups of four (79 bits), none easily taken for another. */
	static String draw() {
		StringBuilder drawn = new StringBuilder();
		for (int i = 0; i < 16; i++) {
			drawn.append((i > 0 && i % 4 == 0) ? "-" : "").append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
		}
		return drawn.toString();
	}

	String code() {
		return this.code;
	}

	boolean matches(String typed) {
		return MessageDigest.isEqual(this.code.getBytes(StandardCharsets.UTF_8),
				typed.strip().getBytes(StandardCharsets.UTF_8));
	}

}
