package org.fallow.account;

import java.util.Optional;

import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

class PasswordRulesTest {

	private final PasswordRules rules = new PasswordRules();

	@Test
	void asksForTwelveToTwoHundredCharacters() {
		assertThat(code("q8#Lw2v!Zr5")).isEqualTo("password.short");
		assertThat(code("q8#Lw2v!Zr5k")).isEmpty();
		assertThat(code("kelp orbit ".repeat(19).substring(0, 200))).isNotEqualTo("password.long");
		assertThat(code("kelp orbit ".repeat(19).substring(0, 201))).isEqualTo("password.long");
		assertThat(code("x".repeat(1_000_000))).isEqualTo("password.long");
	}

	@Test
	void countsCharactersNotTheirHalves() {
		assertThat(code("\uD83C\uDF32".repeat(6))).isEqualTo("password.short");
	}

	@ParameterizedTest
	@ValueSource(strings = { "password1234", "123456789012", "qwertyuiop12", "aaaaaaaaaaaaaaaa", "iloveyou1234" })
	void refusesWhatIsGuessedFirst(String common) {
		assertThat(code(common)).isEqualTo("password.common");
	}

	@Test
	void refusesThePersonsOwnNames() {
		assertThat(code("quillonfenwick", "quillon.fenwick@club.example", "Quillon Fenwick"))
			.isEqualTo("password.common");
		assertThat(code("quillonfenwick", "somebody@club.example", "Some Body")).isEmpty();
	}

	@Test
	void asksForNoKindsOfCharacters() {
		assertThat(code("kelp orbit lantern mule")).isEmpty();
	}

	private String code(String password, String... known) {
		Optional<Message> problem = this.rules.problem(password, known);
		return problem.map(Message::code).orElse("");
	}

}
