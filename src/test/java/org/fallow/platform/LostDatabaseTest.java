package org.fallow.platform;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.transaction.TransactionSystemException;

import static org.assertj.core.api.Assertions.assertThat;

/** States are those of PostgreSQL's manual, appendix A. */
class LostDatabaseTest {

	@ParameterizedTest
	@CsvSource({ "08006, AWAY", "08001, AWAY", "57P01, AWAY", "57P02, AWAY", "57P03, AWAY", "53300, AWAY",
			"53100, FULL" })
	void isToldFromItsState(String state, LostDatabase lost) {
		RuntimeException around = new IllegalStateException(new RuntimeException(new SQLException("row Ann", state)));
		assertThat(LostDatabase.in(around)).isEqualTo(Optional.of(lost));
	}

	@Test
	void isToldFromAPoolThatHasNoConnection() {
		assertThat(LostDatabase.in(new SQLTransientConnectionException("none within 10 s")))
			.isEqualTo(Optional.of(LostDatabase.AWAY));
	}

	@ParameterizedTest
	@CsvSource({ "23505", "42501", "40001", "22001" })
	void isNotEveryFailureOfTheDatabase(String state) {
		assertThat(LostDatabase.in(new SQLException("row", state))).isEmpty();
		assertThat(LostDatabase.in(new IllegalStateException("08006"))).isEmpty();
	}

	@Test
	void isUnsureOnceItCommits() {
		SQLException failure = new SQLException("gone", "08006");
		failure.setStackTrace(new StackTraceElement[] {
				new StackTraceElement("org.postgresql.jdbc.PgConnection", "commit", "PgConnection.java", 1) });
		assertThat(LostDatabase.in(failure)).isEqualTo(Optional.of(LostDatabase.UNSURE));
	}

	@Test
	void isUnsureOnceTheSessionIsSaved() {
		SQLException failure = new SQLException("gone", "57P01");
		failure.setStackTrace(new StackTraceElement[] { new StackTraceElement(
				"org.springframework.session.jdbc.JdbcIndexedSessionRepository", "save", "J.java", 1) });
		assertThat(LostDatabase.in(failure)).isEqualTo(Optional.of(LostDatabase.UNSURE));
	}

	@Test
	void isToldFromWhatWasToBeTakenBack() {
		TransactionSystemException ended = new TransactionSystemException("Could not roll back",
				new SQLException("Connection is closed"));
		assertThat(LostDatabase.in(ended)).isEqualTo(Optional.of(LostDatabase.AWAY));
		ended.initApplicationException(new IllegalStateException(new SQLException("row", "53100")));
		assertThat(LostDatabase.in(ended)).isEqualTo(Optional.of(LostDatabase.FULL));
	}

	@Test
	void comesToAnEndWithCausesInACircle() {
		IllegalStateException one = new IllegalStateException("one");
		IllegalStateException other = new IllegalStateException("other", one);
		one.initCause(other);
		assertThat(LostDatabase.in(one)).isEmpty();
	}

}
