package org.fallow.access;

import javax.sql.DataSource;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionExecution;
import org.springframework.transaction.TransactionExecutionListener;

/**
 * Tells the database at each transaction's begin who is asking and for what purpose, as
 * the settings {@code fallow.person} and {@code fallow.purpose}, which end with the
 * transaction. Each is '' for none; policies read them by the functions
 * {@code fallow_person()} and {@code fallow_purpose()}.
 */
@Component
class PersonOfTransaction implements TransactionExecutionListener {

	private final CurrentPerson currentPerson;

	private final JdbcClient jdbc;

	PersonOfTransaction(CurrentPerson currentPerson, DataSource dataSource) {
		this.currentPerson = currentPerson;
		this.jdbc = JdbcClient.create(dataSource);
	}

	/**
	 * Finds the person out before the transaction takes a connection: it may need one
	 * itself, to load the session.
	 */
	@Override
	public void beforeBegin(TransactionExecution transaction) {
		this.currentPerson.id();
	}

	@Override
	public void afterBegin(TransactionExecution transaction, @Nullable Throwable beginFailure) {
		if (beginFailure == null) {
			String person = this.currentPerson.id().map(PersonId::toString).orElse("");
			this.jdbc.sql("select set_config('fallow.person', ?, true) || set_config('fallow.purpose', ?, true)")
				.params(person, Purpose.told(!person.isEmpty()))
				.query(String.class)
				.single();
		}
	}

}
