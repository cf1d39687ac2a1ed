package org.fallow.account;

import java.time.ZoneOffset;
import java.util.Locale;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.fallow.team.People;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

@DatabaseTest
class AccountsTests {

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Test
	void foldsTheCaseOfSignInNames() {
		PersonId first = this.people.addPerson("Cay", ZoneOffset.UTC);
		String name = "Cay-" + UUID.randomUUID() + "@Club.Example";
		String password = this.accounts.issuePassword(first, name);
		assertThat(password).hasSizeGreaterThan(Accounts.SHORTEST_PASSWORD);
		PersonId second = this.people.addPerson("Dov", ZoneOffset.UTC);
		assertThat(this.accounts.isTaken(name.toUpperCase(Locale.ROOT), second)).isTrue();
		assertThatExceptionOfType(IllegalArgumentException.class)
			.isThrownBy(() -> this.accounts.issuePassword(second, name.toUpperCase(Locale.ROOT)));
	}

}
