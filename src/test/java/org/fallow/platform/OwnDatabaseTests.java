package org.fallow.platform;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

class OwnDatabaseTests {

	@TempDir
	private Path folder;

	@Test
	void writesEveryCommitToDisk() throws Exception {
		try (OwnDatabase database = start()) {
			assertThat(ask(database, "show fsync")).isEqualTo("on");
			assertThat(ask(database, "show synchronous_commit")).isEqualTo("on");
			assertThat(ask(database, "show full_page_writes")).isEqualTo("on");
		}
	}

	@Test
	void listensToThisMachineOnlyAndAsksForAPassword() throws Exception {
		try (OwnDatabase database = start()) {
			assertThat(ask(database, "show listen_addresses")).isEqualTo("localhost");
			for (String role : new String[] { "postgres", Roles.OWNER, Roles.APPLICATION }) {
				assertThatExceptionOfType(SQLException.class)
					.isThrownBy(() -> DriverManager.getConnection(database.url(), role, "wrong"))
					.satisfies((ex) -> assertThat(ex.getSQLState()).isEqualTo("28P01"));
			}
		}
	}

	@Test
	void givesTheApplicationARoleWithoutPowers() throws Exception {
		try (OwnDatabase database = start()) {
			assertThat(ask(database, """
					select rolsuper or rolbypassrls or rolcreaterole or rolcreatedb or rolreplication
					from pg_roles where rolname = current_user""")).isEqualTo("f");
			assertThat(ask(database, "select pg_get_userbyid(datdba) from pg_database where datname = 'fallow'"))
				.isEqualTo("fallow_owner");
			assertThat(ask(database, "select nspowner::regrole::text from pg_namespace where nspname = 'public'"))
				.isEqualTo("fallow_owner");
			assertThat(ask(database, "select pg_has_role(current_user, 'fallow_owner', 'member')")).isEqualTo("f");
			assertThatExceptionOfType(SQLException.class).isThrownBy(() -> ask(database, "create table mine (a int)"))
				.satisfies((ex) -> assertThat(ex.getSQLState()).isEqualTo("42501"));
		}
	}

	@Test
	void keepsTheHomePrivate() throws Exception {
		try (OwnDatabase database = start()) {
			assertThat(permissions(home())).isEqualTo("rwx------");
			assertThat(permissions(home().resolve("database"))).isEqualTo("rwx------");
			assertThat(permissions(home().resolve("passwords.properties"))).isEqualTo("rw-------");
			assertThat(home().resolve("superuser")).doesNotExist();
			assertThat(database.passwords().toString()).doesNotContain(database.passwords().application());
		}
	}

	@Test
	void keepsCommittedRowsWhenStopped() throws Exception {
		try (OwnDatabase database = start()) {
			keepARow(database.url(), database.passwords());
		}
		assertThatTheRowIsKept();
	}

	@ParameterizedTest
	@ValueSource(booleans = { false, true })
	void keepsCommittedRowsWhenKilled(boolean withPostmaster) throws Exception {
		try (FallowProcess fallow = FallowProcess.start(this.folder, "--fallow.home=" + home())) {
			fallow.awaitStarted();
			List<String> pidFile = Files.readAllLines(home().resolve("database/postmaster.pid"));
			keepARow("jdbc:postgresql://localhost:" + pidFile.get(3) + "/fallow",
					Passwords.read(home().resolve("passwords.properties")));
			if (withPostmaster) {
				ProcessHandle.of(Long.parseLong(pidFile.get(0))).ifPresent(ProcessHandle::destroyForcibly);
			}
			fallow.kill();
		}
		assertThatTheRowIsKept();
	}

	private static void keepARow(String url, Passwords passwords) throws SQLException {
		try (Connection connection = DriverManager.getConnection(url, Roles.OWNER, passwords.owner());
				Statement statement = connection.createStatement()) {
			statement.execute("create table kept (a int)");
			statement.execute("insert into kept values (7)");
			statement.execute("grant select on kept to fallow_app");
		}
	}

	private void assertThatTheRowIsKept() throws Exception {
		try (OwnDatabase again = start()) {
			assertThat(ask(again, "select a from kept")).isEqualTo("7");
		}
	}

	@Test
	void beginsAgainAfterAFirstStartThatWasCutShort() throws Exception {
		Files.createDirectories(home().resolve("database.new"));
		Files.writeString(home().resolve("database.new/PG_VERSION"), "18");
		Files.writeString(home().resolve("superuser"), "left over");
		try (OwnDatabase database = start()) {
			assertThat(ask(database, "select 1")).isEqualTo("1");
			assertThat(home().resolve("database.new")).doesNotExist();
		}
	}

	@Test
	void asksForThePasswordsFileWhenItIsGone() throws Exception {
		start().close();
		Files.delete(home().resolve("passwords.properties"));
		assertThatExceptionOfType(StartFailure.class).isThrownBy(this::start)
			.satisfies((ex) -> assertThat(ex.sentence()).contains("passwords.properties").contains("missing"));
	}

	@Test
	void namesTheLogWhenTheDatabaseIsDamaged() throws Exception {
		Files.createDirectories(home());
		Files.writeString(home().resolve("database"), "no folder");
		assertThatExceptionOfType(StartFailure.class).isThrownBy(this::start)
			.satisfies((ex) -> assertThat(ex.sentence()).contains("database.log"));
	}

	@Test
	void wipesTheDemoUnlessItIsKept() throws Exception {
		try (Home home = Home.open(home())) {
			DemoHome.prepare(home, false);
			Files.createDirectory(home.database());
			DemoHome.prepare(home, true);
			assertThat(home.database()).exists();
			DemoHome.prepare(home, false);
			assertThat(home.database()).doesNotExist();
		}
	}

	@Test
	void neverWipesAHomeThatTheDemoDidNotMake() throws Exception {
		try (Home home = Home.open(home())) {
			Files.createDirectory(home.database());
			assertThatExceptionOfType(StartFailure.class).isThrownBy(() -> DemoHome.prepare(home, false))
				.satisfies((ex) -> assertThat(ex.sentence()).contains("the demo would wipe it"));
			assertThat(home.database()).exists();
		}
	}

	private Path home() {
		return this.folder.resolve("home");
	}

	private OwnDatabase start() throws Exception {
		Home home = Home.open(home());
		try {
			return OwnDatabase.start(home);
		}
		catch (StartFailure ex) {
			home.close();
			throw ex;
		}
	}

	private static String ask(OwnDatabase database, String sql) throws SQLException {
		try (Connection connection = DriverManager.getConnection(database.url(), Roles.APPLICATION,
				database.passwords().application());
				Statement statement = connection.createStatement();
				ResultSet rows = statement.executeQuery(sql)) {
			rows.next();
			return rows.getString(1);
		}
	}

	private static String permissions(Path path) throws Exception {
		return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
	}

}
