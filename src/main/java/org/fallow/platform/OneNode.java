package org.fallow.platform;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

import javax.sql.DataSource;

import org.springframework.stereotype.Component;

/**
 * Work that one node does at a time. The database holds the lock on a connection of its
 * own, so it ends with the node, however that ends.
 */
@Component
public class OneNode {

	private final DataSource source;

	OneNode(DataSource source) {
		this.source = source;
	}

	/**
	 * Does some work unless another node, or another thread, is at the same.
	 * @param work which work: a number that stands for nothing else
	 * @param todo what to do; it uses connections of its own
	 * @return whether it was done
	 */
	public boolean tryToRun(long work, Runnable todo) {
		try (Connection connection = this.source.getConnection()) {
			if (!ask(connection, "select pg_try_advisory_lock(?)", work)) {
				return false;
			}
			try {
				todo.run();
			}
			finally {
				ask(connection, "select pg_advisory_unlock(?)", work);
			}
			return true;
		}
		catch (SQLException ex) {
			throw new IllegalStateException("The lock of work " + work + " could not be asked for", ex);
		}
	}

	private static boolean ask(Connection connection, String question, long work) throws SQLException {
		try (PreparedStatement statement = connection.prepareStatement(question)) {
			statement.setLong(1, work);
			try (ResultSet answer = statement.executeQuery()) {
				return answer.next() && answer.getBoolean(1);
			}
		}
	}

}
