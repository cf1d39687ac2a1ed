package org.fallow.account;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;
import java.util.function.Supplier;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.team.Member;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

/** The walls within the database, as the application's role meets them. */
@DatabaseTest
@NobodyOperates
class WallsTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 1);

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private Squad squad;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	private PersonId coach;

	private PersonId ann;

	@BeforeEach
	void openTwoAccounts() {
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.coach = this.people.addCoach(team.id(), "Cay");
		this.ann = this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id();
		this.accounts.open(this.coach, this.coach + "@club.example");
		this.accounts.open(this.ann, this.ann + "@club.example");
		this.accounts.resetLink(this.ann);
	}

	@Test
	void showsAPersonTheOwnAccountOnly() {
		assertThat(CurrentPerson.callAs(this.ann, () -> accountsSeen(this.ann))).isOne();
		assertThat(CurrentPerson.callAs(this.coach, () -> accountsSeen(this.ann))).isZero();
		assertThat(accountsSeen(this.ann)).isZero();
	}

	@Test
	void opensForTheWorkOfSigningInAndForOperation() {
		assertThat(Purpose.SIGN_IN.call(() -> accountsSeen(this.ann))).isOne();
		assertThat(Purpose.OPERATION.call(() -> accountsSeen(this.ann))).isOne();
		assertThat(accountsSeen(this.ann)).isZero();
	}

	@Test
	void showsAPersonTheOwnLinkOnly() {
		String links = "select count(*) from password_link where person_id = ?";
		assertThat(CurrentPerson.callAs(this.ann, () -> count(links, this.ann.value()))).isOne();
		assertThat(CurrentPerson.callAs(this.coach, () -> count(links, this.ann.value()))).isZero();
		assertThat(count(links, this.ann.value())).isZero();
	}

	@Test
	void keepsPasskeysApart() {
		CurrentPerson.runAs(this.ann, () -> inTransaction(() -> begin(this.ann)));
		String owners = "select count(*) from user_entities where person_id = ?";
		assertThat(CurrentPerson.callAs(this.ann, () -> count(owners, this.ann.value()))).isOne();
		assertThat(CurrentPerson.callAs(this.coach, () -> count(owners, this.ann.value()))).isZero();
		assertThatExceptionOfType(DataAccessException.class)
			.isThrownBy(() -> CurrentPerson.runAs(this.ann, () -> inTransaction(() -> begin(this.coach))));
	}

	@Test
	void tellsAHeadCoachTheSignInNamesOfTheTeam() {
		assertThat(CurrentPerson.callAs(this.coach, () -> this.squad.membersOf(this.coach)))
			.extracting(Member::username)
			.containsExactly(this.ann + "@club.example");
		String names = "select count(*) from squad_usernames(now()) where person_id = ?";
		assertThat(CurrentPerson.callAs(this.ann, () -> count(names, this.coach.value()))).isZero();
		assertThat(CurrentPerson.callAs(this.ann, () -> count(names, this.ann.value()))).isZero();
	}

	@Test
	void refusesAPurposeWithinATransaction() {
		assertThatIllegalStateException()
			.isThrownBy(() -> inTransaction(() -> Purpose.SIGN_IN.call(() -> accountsSeen(this.ann))));
	}

	@Test
	void returnsToTheOuterPurpose() {
		int seen = Purpose.OPERATION.call(() -> {
			assertThatIllegalStateException().isThrownBy(() -> Purpose.SIGN_IN.run(() -> {
				throw new IllegalStateException();
			}));
			return accountsSeen(this.ann);
		});
		assertThat(seen).isOne();
	}

	private int begin(PersonId person) {
		String id = person.toString();
		return this.jdbc.sql("insert into user_entities (id, name, display_name) values (?, ?, ?)")
			.params("handle-" + id, id, id)
			.update();
	}

	private int accountsSeen(PersonId person) {
		return count("select count(*) from account where person_id = ?", person.value());
	}

	private int count(String sql, UUID id) {
		return inTransaction(() -> this.jdbc.sql(sql).param(id).query(Integer.class).single());
	}

	private <T> T inTransaction(Supplier<T> work) {
		return new TransactionTemplate(this.transactions).execute((status) -> work.get());
	}

}
