package org.fallow.platform;

import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;

/**
 * How the migrations sign in to the database.
 *
 * @param url the JDBC address, without user or password
 * @param role the database role
 * @param password its password
 */
record MigrationConnection(String url, String role, String password) implements FlywayConnectionDetails {

	@Override
	public String getUsername() {
		return this.role;
	}

	@Override
	public String getPassword() {
		return this.password;
	}

	@Override
	public String getJdbcUrl() {
		return this.url;
	}

	/** Keeps the password out of logs. */
	@Override
	public String toString() {
		return this.role + " at " + this.url;
	}

}
