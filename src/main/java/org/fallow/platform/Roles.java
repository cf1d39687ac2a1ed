package org.fallow.platform;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

import javax.sql.DataSource;

/**
 * Makes Fallow's database and its two roles on a fresh server: {@code fallow_owner}, who
 * owns the database and its tables and whom Flyway migrates as, and {@code fallow_app},
 * who owns nothing, is no superuser, cannot bypass row-level security and may do only
 * what a migration grants.
 */
final class Roles {

	static final String OWNER = "fallow_owner";

	static final String APPLICATION = "fallow_app";

	static final String DATABASE = "fallow";

	private static final String RIGHTS = " nosuperuser nocreatedb nocreaterole noreplication nobypassrls";

	private Roles() {
	}

	/** Makes the roles and the database; the passwords are hexadecimal digits. */
	static void makeOn(DataSource server, Passwords passwords) throws SQLException {
		run(server,
				List.of("create role " + OWNER + " login password '" + passwords.owner() + "'" + RIGHTS,
						"create role " + APPLICATION + " login password '" + passwords.application() + "'" + RIGHTS,
						"create database " + DATABASE + " owner " + OWNER,
						"revoke all on database " + DATABASE + " from public",
						"grant connect on database " + DATABASE + " to " + APPLICATION));
	}

	/** Hands the schema {@code public} of the new database to its owner. */
	static void ownSchemaOf(DataSource database) throws SQLException {
		run(database, List.of("alter schema public owner to " + OWNER, "revoke all on schema public from public",
				"grant usage on schema public to " + APPLICATION));
	}

	private static void run(DataSource source, List<String> statements) throws SQLException {
		try (Connection connection = source.getConnection(); Statement statement = connection.createStatement()) {
			for (String sql : statements) {
				statement.execute(sql);
			}
		}
	}

}
