package org.fallow.account;

import java.security.SecureRandom;
import java.util.Base64;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

/**
 * Passwords are hashed with Argon2id, its parameters and salt kept with each hash.
 */
@Configuration(proxyBeanMethods = false)
class PasswordHashing {

	private static final int SALT_BYTES = 16;

	private static final int HASH_BYTES = 32;

	private static final int LANES = 1;

	private static final int KIBIBYTES = 16 * 1024;

	private static final int PASSES = 2;

	@Bean
	PasswordEncoder passwordEncoder() {
		return new Argon2PasswordEncoder(SALT_BYTES, HASH_BYTES, LANES, KIBIBYTES, PASSES);
	}

	/**
	 * What looks like the hash of a password and takes as long to compare with, but was
	 * drawn, so that nobody knows a password for it.
	 */
	static String nobodysHash() {
		return "$argon2id$v=19$m=" + KIBIBYTES + ",t=" + PASSES + ",p=" + LANES + "$" + drawn(SALT_BYTES) + "$"
				+ drawn(HASH_BYTES);
	}

	private static String drawn(int count) {
		byte[] bytes = new byte[count];
		new SecureRandom().nextBytes(bytes);
		return Base64.getEncoder().withoutPadding().encodeToString(bytes);
	}

}
