package org.fallow.access;

import javax.sql.DataSource;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionExecution;
import org.springframework.transaction.TransactionExecutionListener;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Tells the database at each transaction's begin who is asking and for what purpose, as
 * the settings {@code fallow.person} and {@code fallow.purpose}, which end with the
 * transaction. Each is '' for none; policies read them by the functions
 * {@code fallow_person()} and {@code fallow_purpose()}. Who made the link that opened the
 * sign-in is {@code fallow.link_by}, the default of the facts' column of that name.
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

	/**
	 * Must not throw: the transaction has begun, and its connection would stay bound to
	 * the thread for ever, broken as it is. A connection on which this failed does
	 * nothing more in the transaction, and whatever does not notice fails at the commit.
	 */
	@Override
	public void afterBegin(TransactionExecution transaction, @Nullable Throwable beginFailure) {
		if (beginFailure == null) {
			try {
				tell();
			}
			catch (RuntimeException ex) {
				TransactionSynchronizationManager.registerSynchronization(new Untold(ex));
			}
		}
	}

	private void tell() {
		String person = this.currentPerson.id().map(PersonId::toString).orElse("");
		this.jdbc.sql("""
				select set_config('fallow.person', ?, true) || set_config('fallow.purpose', ?, true)
					|| set_config('fallow.link_by', ?, true)""")
			.params(person, Purpose.told(!person.isEmpty()), this.currentPerson.linkBy().orElse(""))
			.query(String.class)
			.single();
	}

	/**
	 * Refuses the commit of a transaction of which the database was not told whose it is.
	 *
	 * @param why what went wrong
	 */
	private record Untold(RuntimeException why) implements TransactionSynchronization {

		@Override
		public void beforeCommit(boolean readOnly) {
			throw this.why;
		}

	}

}
