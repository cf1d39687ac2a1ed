package org.fallow.access;

import java.util.List;

import org.fallow.platform.DatabaseTest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

@DatabaseTest
class PersonOfTransactionTests {

	private static final PersonId COACH = PersonId.next();

	private static final PersonId JOB = PersonId.next();

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	@AfterEach
	void signOut() {
		SecurityContextHolder.clearContext();
	}

	@Test
	void tellsTheDatabaseWhoIsSignedIn() {
		signIn(COACH);
		assertThat(personInTransaction()).isEqualTo(COACH.toString());
	}

	@Test
	void tellsTheDatabaseThatNobodyIsSignedIn() {
		signIn(COACH);
		personInTransaction();
		SecurityContextHolder.clearContext();
		assertThat(personInTransaction()).isEmpty();
	}

	@Test
	void tellsTheDatabaseWhomAJobRunsAs() {
		signIn(COACH);
		assertThat(CurrentPerson.callAs(JOB, this::personInTransaction)).isEqualTo(JOB.toString());
		assertThat(personInTransaction()).isEqualTo(COACH.toString());
	}

	@Test
	void forgetsThePersonWithTheTransaction() {
		signIn(COACH);
		personInTransaction();
		assertThat(person()).isEmpty();
	}

	@Test
	void tellsTheDatabaseAgainInAnInnerTransaction() {
		signIn(COACH);
		TransactionTemplate inner = new TransactionTemplate(this.transactions);
		inner.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
		String person = new TransactionTemplate(this.transactions)
			.execute((outer) -> inner.execute((status) -> person()));
		assertThat(person).isEqualTo(COACH.toString());
	}

	@Test
	void refusesToChangeThePersonWithinATransaction() {
		assertThatIllegalStateException().isThrownBy(() -> new TransactionTemplate(this.transactions)
			.executeWithoutResult((status) -> CurrentPerson.runAs(JOB, this::person)));
	}

	private static void signIn(PersonId person) {
		SignedIn principal = () -> person;
		SecurityContextHolder.getContext().setAuthentication(new TestingAuthenticationToken(principal, "", List.of()));
	}

	private String personInTransaction() {
		TransactionTemplate template = new TransactionTemplate(this.transactions);
		return template.execute((status) -> person());
	}

	private String person() {
		return this.jdbc.sql("select coalesce(current_setting('fallow.person', true), '')")
			.query(String.class)
			.single();
	}

}
