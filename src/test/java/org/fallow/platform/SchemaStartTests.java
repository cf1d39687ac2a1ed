package org.fallow.platform;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Fallow on a database that is not as it should be, each time started as an operator
 * starts it: it ends with exit code 1 and one sentence, and leaves the database alone.
 */
@TestInstance(Lifecycle.PER_CLASS)
class SchemaStartTests {

	private static final String AN_APPLIED_MIGRATION = "where installed_rank = (select min(installed_rank) from flyway_schema_history where version = '003')";

	private Path folder;

	private OwnDatabase server;

	@BeforeAll
	void makeADatabase(@TempDir Path shared) throws Exception {
		this.folder = shared;
		this.server = OwnDatabase.start(Home.open(this.folder.resolve("server")));
		try (FallowProcess fallow = start(Roles.APPLICATION, application(), Roles.OWNER, owner())) {
			fallow.awaitStarted();
		}
	}

	@AfterAll
	void stop() throws Exception {
		this.server.close();
	}

	@AfterEach
	void mend() throws SQLException {
		run("delete from flyway_schema_history where version = '999'");
		run("update flyway_schema_history set checksum = checksum - 1 " + AN_APPLIED_MIGRATION
				+ " and description = 'changed'");
		run("update flyway_schema_history set description = 'create facts' " + AN_APPLIED_MIGRATION);
		run("alter role fallow_app connection limit -1");
	}

	@Test
	void refusesASchemaThatANewerFallowMade() throws Exception {
		run("insert into flyway_schema_history values "
				+ "(999, '999', 'later', 'SQL', 'V999__later.sql', 1, 'fallow_owner', now(), 1, true)");
		assertFails("The database was made by a newer Fallow (migration 999)", Roles.APPLICATION, application(),
				Roles.OWNER, owner());
	}

	@Test
	void refusesAMigrationThatWasChanged() throws Exception {
		run("update flyway_schema_history set checksum = checksum + 1, description = 'changed' "
				+ AN_APPLIED_MIGRATION);
		assertFails("The database has another history than this Fallow: migration 003", Roles.APPLICATION,
				application(), Roles.OWNER, owner());
	}

	@Test
	void saysThatNoConnectionIsLeft() throws Exception {
		run("alter role fallow_app connection limit 0");
		assertFails("The configured database " + this.server.url() + " has no connection left", Roles.APPLICATION,
				application(), Roles.OWNER, owner());
	}

	@Test
	void refusesToServePagesAsTheOwner() throws Exception {
		assertFails("The role fallow_owner of spring.datasource owns Fallow's tables", Roles.OWNER, owner(),
				Roles.OWNER, owner());
	}

	@Test
	void refusesToServePagesAsARoleWithoutRights() throws Exception {
		run("drop role if exists nobody_much");
		run("create role nobody_much login password 'nothing'");
		run("grant connect on database fallow to nobody_much");
		run("grant usage on schema public to nobody_much");
		assertFails("The role nobody_much of spring.datasource may not read and add", "nobody_much", "nothing",
				Roles.OWNER, owner());
		run("drop owned by nobody_much");
	}

	@Test
	void refusesToMigrateAsAnybodyButTheOwner() throws Exception {
		assertFails("The configured database " + this.server.url() + " does not let Fallow's roles do their work",
				Roles.APPLICATION, application(), Roles.APPLICATION, application());
	}

	@Test
	void saysThatThePasswordOfTheMigrationsIsWrong() throws Exception {
		assertFails("The configured database " + this.server.url() + " refuses the sign-in", Roles.APPLICATION,
				application(), Roles.OWNER, "wrong");
	}

	private void assertFails(String sentence, String user, String password, String owner, String ownersPassword)
			throws Exception {
		try (FallowProcess fallow = start(user, password, owner, ownersPassword)) {
			assertThat(fallow.exitCode()).isEqualTo(1);
			assertThat(fallow.errors()).startsWith(sentence).endsWith(".").hasLineCount(1);
			assertThat(fallow.output()).doesNotContain("\tat ").doesNotContain("ERROR");
		}
	}

	private FallowProcess start(String user, String password, String owner, String ownersPassword) {
		return FallowProcess.start(this.folder, "--spring.datasource.url=" + this.server.url(),
				"--spring.datasource.username=" + user, "--spring.datasource.password=" + password,
				"--spring.flyway.user=" + owner, "--spring.flyway.password=" + ownersPassword,
				"--spring.datasource.hikari.connection-timeout=2000");
	}

	private String application() {
		return this.server.passwords().application();
	}

	private String owner() {
		return this.server.passwords().owner();
	}

	private void run(String sql) throws SQLException {
		try (Connection connection = DriverManager.getConnection(this.server.url(), "postgres",
				this.server.passwords().superuser()); Statement statement = connection.createStatement()) {
			statement.execute(sql);
		}
	}

}
