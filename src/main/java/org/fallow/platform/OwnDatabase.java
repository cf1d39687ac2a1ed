package org.fallow.platform;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import io.zonky.test.db.postgres.util.LinuxUtils;

import org.springframework.util.FileSystemUtils;

/**
 * Fallow's own durable PostgreSQL in its home folder, reachable from this machine only
 * and by password only. The first start builds it beside its place and moves it in when
 * it is complete, so that a start that is cut short leaves nothing half made.
 */
final class OwnDatabase implements AutoCloseable, DatabaseWatch.Watched {

	private static final long FIRST_START_MEGABYTES = 200;

	private static final long LATER_START_MEGABYTES = 40;

	/** For a server that has much to replay after it was killed. */
	private static final Duration RESTART_PATIENCE = Duration.ofMinutes(5);

	private final Home home;

	private final Passwords passwords;

	private final EmbeddedPostgres postgres;

	private OwnDatabase(Home home, Passwords passwords, EmbeddedPostgres postgres) {
		this.home = home;
		this.passwords = passwords;
		this.postgres = postgres;
	}

	/**
	 * Opens the home of a choice, prepares it for the demo where that is chosen, and
	 * starts its database.
	 */
	static OwnDatabase start(HomeChoice choice) throws IOException {
		Home home = Home.open(choice.folder());
		try {
			if (choice.demo()) {
				DemoHome.prepare(home, choice.keep());
			}
			return start(home);
		}
		catch (IOException | RuntimeException ex) {
			home.close();
			throw ex;
		}
	}

	/**
	 * Starts the database of a home, making it first where there is none yet; it takes
	 * over the home's lock.
	 */
	static OwnDatabase start(Home home) throws IOException {
		boolean first = !Files.exists(home.database());
		home.requireSpace(first ? FIRST_START_MEGABYTES : LATER_START_MEGABYTES);
		try {
			new Leftovers(home).stop();
			Files.deleteIfExists(home.log());
			Programs.unpack(home);
			if (first) {
				make(home);
			}
			Passwords passwords = Passwords.read(home.passwords());
			return new OwnDatabase(home, passwords, server(home, home.database(), passwords).start());
		}
		catch (IOException | SQLException | IllegalStateException | UncheckedIOException ex) {
			home.requireSpace(LATER_START_MEGABYTES);
			if (Home.saysDiskFull(ex)) {
				throw new StartFailure(ex, "start.disk-quota", home.folder().toString());
			}
			throw new StartFailure(ex, "start.own-database-failed", home.log().toString());
		}
	}

	private static void make(Home home) throws IOException, SQLException {
		Path draft = home.databaseInTheMaking();
		FileSystemUtils.deleteRecursively(draft);
		Passwords passwords = Passwords.draw();
		passwords.write(home.passwords());
		Path superuser = home.folder().resolve("superuser");
		Passwords.writePrivately(superuser, List.of(passwords.superuser()));
		EmbeddedPostgres.Builder builder = server(home, draft, passwords)
			.setLocaleConfig("pwfile", superuser.toString())
			.setDataDirectoryCustomizer((folder) -> requirePasswords(folder.toPath()));
		try (EmbeddedPostgres server = builder.start()) {
			Roles.makeOn(server.getPostgresDatabase(), passwords);
			Roles.ownSchemaOf(server.getDatabase("postgres", Roles.DATABASE));
		}
		Files.delete(superuser);
		Files.move(draft, home.database(), StandardCopyOption.ATOMIC_MOVE);
		sync(home.folder());
	}

	private static EmbeddedPostgres.Builder server(Home home, Path data, Passwords passwords) {
		ProcessBuilder.Redirect log = ProcessBuilder.Redirect.appendTo(home.log().toFile());
		return EmbeddedPostgres.builder()
			.setDataDirectory(data)
			.setCleanDataDirectory(false)
			.setOverrideWorkingDirectory(home.binaries().toFile())
			.setPgBinaryResolver(new Binaries(home.binaries()))
			.setRegisterShutdownHook(false)
			.setPGStartupWait(Duration.ofMinutes(1))
			.setOutputRedirector(log)
			.setErrorRedirector(log)
			.setConnectConfig("password", passwords.superuser())
			.setLocaleConfig("locale", "C")
			.setLocaleConfig("locale-provider", "builtin")
			.setLocaleConfig("builtin-locale", "C.UTF-8")
			.setServerConfig("fsync", "on")
			.setServerConfig("synchronous_commit", "on")
			.setServerConfig("full_page_writes", "on")
			.setServerConfig("listen_addresses", "localhost")
			.setServerConfig("unix_socket_directories", "")
			// its log must not quote rows
			.setServerConfig("log_error_verbosity", "terse");
	}

	static void requirePasswords(Path data) {
		try {
			Files.write(data.resolve("pg_hba.conf"),
					List.of("host all all 127.0.0.1/32 scram-sha-256", "host all all ::1/128 scram-sha-256"));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/** Makes the move into place survive a power cut. */
	private static void sync(Path folder) throws IOException {
		if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
			try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
				channel.force(true);
			}
		}
	}

	String url() {
		return "jdbc:postgresql://localhost:" + this.postgres.getPort() + "/" + Roles.DATABASE;
	}

	Passwords passwords() {
		return this.passwords;
	}

	/** Whether the server is running. */
	@Override
	public boolean runs() {
		return new Leftovers(this.home).postmasterRuns();
	}

	/**
	 * Starts the server again after it died, with the settings and on the port it had.
	 * @throws IOException if it does not come up; its log says why
	 */
	@Override
	public void startAgain() throws IOException {
		new Leftovers(this.home).stop();
		try {
			Process starting = new ProcessBuilder(restart()).redirectErrorStream(true)
				.redirectOutput(ProcessBuilder.Redirect.appendTo(this.home.log().toFile()))
				.start();
			if (starting.waitFor() != 0 || !runs()) {
				throw new IOException("it does not come up");
			}
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			throw new IOException("interrupted", ex);
		}
	}

	/**
	 * PostgreSQL keeps the settings of its last start in {@code postmaster.opts}, which
	 * {@code pg_ctl restart} reads; it starts a server that is not running, too. It
	 * refuses to run as root, hence {@code unshare} as at the first start.
	 */
	private List<String> restart() throws IOException {
		List<String> command = new ArrayList<>();
		if (LinuxUtils.isUnshareAvailable()) {
			command.addAll(List.of("unshare", "-U"));
		}
		command.addAll(List.of(Programs.in(this.home).resolve("bin").resolve("pg_ctl").toString(), "-D",
				this.home.database().toString(), "-w", "-t", Long.toString(RESTART_PATIENCE.toSeconds()), "restart"));
		return command;
	}

	@Override
	public DiskRoom room() throws IOException {
		return this.home.room();
	}

	String folder() {
		return this.home.folder().toString();
	}

	String log() {
		return this.home.log().toString();
	}

	/** Stops the database and lets another Fallow take the home. */
	@Override
	public void close() throws IOException {
		this.postgres.close();
		new Leftovers(this.home).stop();
		this.home.close();
	}

}
