package org.fallow.platform;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;

import org.postgresql.jdbc.PgConnection;

import org.springframework.transaction.TransactionSystemException;

/**
 * Tells from an exception that the database could not do its work, whatever it was asked:
 * it was away, or its disk was full. States are those of SQL and of PostgreSQL's manual,
 * appendix A.
 */
public enum LostDatabase {

	/** It could not be reached, or went away before the work was committed. */
	AWAY,

	/**
	 * It went away while the work was being committed or afterwards: nobody can say
	 * whether it is stored.
	 */
	UNSURE,

	/** It refused to write because its disk is full. */
	FULL;

	/** Causes may form a circle. */
	private static final int DEEPEST = 50;

	private static final String DISK_FULL = "53100";

	/** What the pool says, without a state, of a connection that broke before. */
	private static final String CLOSED = "Connection is closed";

	private static final String SESSIONS = "org.springframework.session.jdbc.JdbcIndexedSessionRepository";

	/** Shut down, killed, starting, too many connections. */
	private static final Set<String> STATES = Set.of("57P01", "57P02", "57P03", "53300");

	/**
	 * Looks for the database's failure among an exception's causes.
	 * @param failure what came out of a request or of timed work
	 * @return what the outermost of them says that says any; empty when something else
	 * went wrong
	 */
	public static Optional<LostDatabase> in(Throwable failure) {
		int depth = 0;
		for (Throwable one = failure; one != null && depth < DEEPEST; one = one.getCause()) {
			if (one instanceof SQLException sql && of(sql).isPresent()) {
				return of(sql);
			}
			if (one instanceof TransactionSystemException ended && ended.getApplicationException() != null) {
				// why the work was to be taken back says more than why that failed
				return in(ended.getApplicationException());
			}
			depth++;
		}
		return Optional.empty();
	}

	private static Optional<LostDatabase> of(SQLException failure) {
		String state = String.valueOf(failure.getSQLState());
		if (state.equals(DISK_FULL)) {
			return Optional.of(FULL);
		}
		boolean away = state.startsWith("08") || STATES.contains(state)
				|| failure instanceof SQLTransientConnectionException || CLOSED.equals(failure.getMessage());
		return away
				? Optional
					.of(Arrays.stream(failure.getStackTrace()).anyMatch(LostDatabase::isOrAfterCommit) ? UNSURE : AWAY)
				: Optional.empty();
	}

	/** A session is saved once a request's work has been done and committed. */
	private static boolean isOrAfterCommit(StackTraceElement frame) {
		return (frame.getClassName().equals(PgConnection.class.getName()) && frame.getMethodName().equals("commit"))
				|| (frame.getClassName().equals(SESSIONS) && frame.getMethodName().equals("save"));
	}

}
