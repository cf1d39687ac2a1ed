package org.fallow.rules;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The content hash of a rule set: SHA-256 of its canonical JSON.
 */
public final class RuleHash {

	private RuleHash() {
	}

	/**
	 * The hash of a rule set.
	 * @param rules the rule set
	 * @return 64 hexadecimal digits
	 */
	public static String of(RuleSet rules) {
		return ofText(RuleJson.canonical(rules));
	}

	/**
	 * The hash of a rule set's text as it was stored, which may lack members that came
	 * later.
	 * @param canonical canonical JSON
	 * @return 64 hexadecimal digits
	 */
	public static String ofText(String canonical) {
		try {
			byte[] json = canonical.getBytes(StandardCharsets.UTF_8);
			return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(json));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("every Java has SHA-256", ex);
		}
	}

}
