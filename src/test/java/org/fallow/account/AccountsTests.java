package org.fallow.account;

import java.time.ZoneOffset;
import java.util.Locale;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.fallow.team.People;
import org.fallow.wording.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.core.userdetails.UserDetailsService;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

@DatabaseTest
class AccountsTests {

	private static final String PASSWORD = "a long enough sentence";

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	private PersonId cay;

	private String name;

	@BeforeEach
	void openAnAccount() {
		this.cay = this.people.addPerson("Cay", ZoneOffset.UTC);
		this.name = "cay-" + UUID.randomUUID() + "@club.example";
		this.accounts.open(this.cay, this.name, PASSWORD);
	}

	@Test
	void takesLookAlikesForOneName() {
		PersonId dov = this.people.addPerson("Dov", ZoneOffset.UTC);
		for (String alike : new String[] { this.name.toUpperCase(Locale.ROOT), " " + this.name + "\u3000",
				fullWidth(this.name) }) {
			assertThat(this.accounts.isTaken(alike, dov)).as(alike).isTrue();
			assertThat(this.accounts.isTaken(alike, this.cay)).as(alike).isFalse();
			assertThat(this.users.loadUserByUsername(alike).getUsername()).isEqualTo(this.cay.toString());
			assertThatIllegalArgumentException().isThrownBy(() -> this.accounts.open(dov, alike, PASSWORD));
		}
		assertThat(this.accounts.hasAccount(dov)).isFalse();
	}

	@Test
	void opensOneAccountAPerson() {
		String other = "other-" + this.name;
		this.accounts.open(this.cay, other, PASSWORD);
		assertThat(this.accounts.isTaken(this.name)).isFalse();
		assertThat(this.accounts.isTaken(other)).isTrue();
	}

	@ParameterizedTest
	@CsvSource({ "'a b c',username", "ab,username", "'a\u200bbc',username", "'a\u0000bc',username",
			"fine@club.example,", "TAKEN,username" })
	void saysWhatIsWrongWithAName(String typed, String field) {
		String username = typed.equals("TAKEN") ? this.name.toUpperCase(Locale.ROOT) : typed;
		assertThat(this.accounts.check(username, PASSWORD, "Cay")).extracting(Problem::field)
			.containsExactly((field == null) ? new String[0] : new String[] { field });
	}

	@Test
	void takesNoNameOfAMegabyte() {
		String huge = "a".repeat(1_000_000);
		assertThat(this.accounts.check(huge, PASSWORD, "Cay")).extracting((problem) -> problem.message().code())
			.containsExactly("account.username.form");
		assertThat(this.accounts.isTaken(huge)).isFalse();
	}

	@Test
	void drawsNoLinkForSomebodyWithoutAnAccount() {
		PersonId dov = this.people.addPerson("Dov", ZoneOffset.UTC);
		assertThatIllegalArgumentException().isThrownBy(() -> this.accounts.resetLink(dov));
	}

	private static String fullWidth(String plain) {
		return plain.chars()
			.map((letter) -> (letter > ' ' && letter < 127) ? letter + 0xFEE0 : letter)
			.collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
			.toString();
	}

}
