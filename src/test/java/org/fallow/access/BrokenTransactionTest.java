package org.fallow.access;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;

import javax.sql.DataSource;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.mockito.ArgumentMatchers.anyString;
import static org.mockito.BDDMockito.given;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.verify;

/**
 * A connection that breaks while the database is told who is asking. A thread that kept
 * it answered each later request with a fault, for good.
 */
class BrokenTransactionTest {

	private final DataSource source = mock();

	private final Connection connection = mock();

	private final CurrentPerson nobody = mock();

	private TransactionTemplate transaction = new TransactionTemplate();

	@BeforeEach
	void breakTheConnection() throws SQLException {
		given(this.source.getConnection()).willReturn(this.connection);
		given(this.connection.prepareStatement(anyString())).willThrow(new SQLException("gone", "08006"));
		given(this.nobody.id()).willReturn(Optional.empty());
		JdbcTransactionManager manager = new JdbcTransactionManager(this.source);
		manager.addListener(new PersonOfTransaction(this.nobody, this.source));
		this.transaction = new TransactionTemplate(manager);
	}

	@Test
	void isNotKeptByTheThread() {
		assertThatExceptionOfType(DataAccessException.class)
			.isThrownBy(() -> this.transaction.executeWithoutResult((status) -> {
			}));
		assertThat(TransactionSynchronizationManager.getResourceMap()).isEmpty();
		assertThat(TransactionSynchronizationManager.isSynchronizationActive()).isFalse();
	}

	@Test
	void isNeverCommitted() throws SQLException {
		assertThatExceptionOfType(DataAccessException.class)
			.isThrownBy(() -> this.transaction.executeWithoutResult((status) -> {
			}));
		verify(this.connection, never()).commit();
		verify(this.connection).rollback();
	}

}
