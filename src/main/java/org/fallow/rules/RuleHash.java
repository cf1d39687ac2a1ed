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
		try {
			byte[] json = RuleJson.canonical(rules).getBytes(StandardCharsets.UTF_8);
			return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(json));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("every Java has SHA-256", ex);
		}
	}

}
