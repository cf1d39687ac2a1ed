package org.fallow.platform;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;

import javax.sql.DataSource;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import org.postgresql.ds.PGSimpleDataSource;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * One PostgreSQL for all tests of this JVM: a container where a Docker engine answers,
 * else the embedded one with fsync off. It goes with the JVM.
 */
final class TestServer {

	private static final Passwords PASSWORDS = Passwords.draw();

	private final String host;

	private final int port;

	private TestServer(String host, int port) {
		this.host = host;
		this.port = port;
	}

	static TestServer shared() {
		return Shared.SERVER;
	}

	ApplicationConnection application() {
		return new ApplicationConnection(url(), Roles.APPLICATION, PASSWORDS.application());
	}

	MigrationConnection migration() {
		return new MigrationConnection(url(), Roles.OWNER, PASSWORDS.owner());
	}

	String url() {
		return "jdbc:postgresql://" + this.host + ":" + this.port + "/" + Roles.DATABASE;
	}

	private static TestServer start() {
		try {
			return DockerClientFactory.instance().isDockerAvailable() ? container() : embedded();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		catch (SQLException ex) {
			throw new IllegalStateException(ex);
		}
	}

	@SuppressWarnings("resource")
	private static TestServer container() throws SQLException {
		PostgreSQLContainer container = new PostgreSQLContainer("postgres:17").withUsername("postgres")
			.withPassword(PASSWORDS.superuser())
			.withDatabaseName("postgres");
		container.start();
		TestServer server = new TestServer(container.getHost(), container.getMappedPort(5432));
		Roles.makeOn(server.asSuperuser("postgres"), PASSWORDS);
		Roles.ownSchemaOf(server.asSuperuser(Roles.DATABASE));
		return server;
	}

	private DataSource asSuperuser(String database) {
		PGSimpleDataSource source = new PGSimpleDataSource();
		source.setServerNames(new String[] { this.host });
		source.setPortNumbers(new int[] { this.port });
		source.setDatabaseName(database);
		source.setUser("postgres");
		source.setPassword(PASSWORDS.superuser());
		return source;
	}

	private static TestServer embedded() throws IOException, SQLException {
		Path folder = Files.createDirectories(Path.of("target", "test-database").toAbsolutePath());
		Path superuser = Files.writeString(folder.resolve("superuser"), PASSWORDS.superuser());
		EmbeddedPostgres postgres = EmbeddedPostgres.builder()
			.setDataDirectoryCustomizer((data) -> OwnDatabase.requirePasswords(data.toPath()))
			.setConnectConfig("password", PASSWORDS.superuser())
			.setLocaleConfig("pwfile", superuser.toString())
			.setOverrideWorkingDirectory(folder.toFile())
			.setDataDirectory(Files.createTempDirectory(folder, "data"))
			.setLocaleConfig("locale", "C")
			.setLocaleConfig("locale-provider", "builtin")
			.setLocaleConfig("builtin-locale", "C.UTF-8")
			.setServerConfig("unix_socket_directories", "")
			.start();
		Roles.makeOn(postgres.getPostgresDatabase(), PASSWORDS);
		Roles.ownSchemaOf(postgres.getDatabase("postgres", Roles.DATABASE));
		return new TestServer("localhost", postgres.getPort());
	}

	/** Starts the server when it is first asked for. */
	private static final class Shared {

		private static final TestServer SERVER = start();

	}

}
