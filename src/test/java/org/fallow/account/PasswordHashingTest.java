package org.fallow.account;

import org.junit.jupiter.api.Test;

import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

import static org.assertj.core.api.Assertions.assertThat;

class PasswordHashingTest {

	private final PasswordEncoder encoder = new PasswordHashing().passwordEncoder();

	@Test
	void hashesAsTheFrameworkDoesByItself() {
		PasswordEncoder usual = Argon2PasswordEncoder.defaultsForSpringSecurity_v5_8();

		assertThat(usual.matches("word", this.encoder.encode("word"))).isTrue();
		assertThat(withoutSaltAndHash(this.encoder.encode("word"))).isEqualTo(withoutSaltAndHash(usual.encode("word")));
	}

	@Test
	void nobodysHashCostsAsMuchAsAnyAndFitsNoPassword() {
		String nobodys = PasswordHashing.nobodysHash();
		String somebodys = this.encoder.encode("word");

		assertThat(withoutSaltAndHash(nobodys)).isEqualTo(withoutSaltAndHash(somebodys));
		assertThat(nobodys).hasSameSizeAs(somebodys).isNotEqualTo(PasswordHashing.nobodysHash());
		assertThat(this.encoder.matches("word", nobodys)).isFalse();
		assertThat(this.encoder.matches("", nobodys)).isFalse();
		assertThat(this.encoder.upgradeEncoding(nobodys)).isFalse();
	}

	private static String withoutSaltAndHash(String hash) {
		return hash.substring(0, hash.lastIndexOf('$', hash.lastIndexOf('$') - 1));
	}

}
