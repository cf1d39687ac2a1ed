package org.fallow.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/**
 * The secret of a link: 256 bits, told once to the one who asked for it. Only its SHA-256
 * is ever stored; with that many bits no salt or slow hash is needed.
 *
 * @param text 43 letters that are safe in an address
 */
public record Secret(String text) {

	private static final SecureRandom RANDOM = new SecureRandom();

	private static final int BYTES = 32;

	/**
	 * Draws a new one.
	 * @return a secret that nobody can guess
	 */
	public static Secret draw() {
		byte[] bytes = new byte[BYTES];
		RANDOM.nextBytes(bytes);
		return new Secret(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
	}

	/**
	 * What is stored of it.
	 * @return 64 hexadecimal digits
	 */
	public String hash() {
		return sha256(this.text);
	}

	/**
	 * The one hash for what is kept only to be recognised.
	 * @param text any text, in UTF-8
	 * @return SHA-256, 64 hexadecimal digits
	 */
	public static String sha256(String text) {
		try {
			MessageDigest digest = MessageDigest.getInstance("SHA-256");
			return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("every Java has SHA-256", ex);
		}
	}

	/** Keeps the secret out of logs. */
	@Override
	public String toString() {
		return "Secret";
	}

}
