package org.fallow.platform;

import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;

import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;

/** Each failure ends Fallow with exit code 1 and one sentence on standard error. */
class StartFailureTests {

	@TempDir
	private Path folder;

	@Test
	void refusesAHomeThatIsInUse() throws Exception {
		Path path = this.folder.resolve("home");
		try (Home home = Home.open(path)) {
			assertFails("Another Fallow is already running on the home folder " + home.folder(),
					"--fallow.home=" + path);
		}
	}

	@Test
	void refusesAHomeThatCannotBeWritten() throws Exception {
		Path file = Files.createFile(this.folder.resolve("a-file"));
		assertFails("The home folder " + file.resolve("home") + " cannot be written",
				"--fallow.home=" + file.resolve("home"));
	}

	@Test
	void refusesAFullDisk() throws Exception {
		Path disk = Files.createDirectory(this.folder.resolve("disk"));
		Assumptions.assumeTrue(run("mount", "-t", "tmpfs", "-o", "size=20m", "tmpfs", disk.toString()) == 0,
				"a full disk is tried only where a small file system may be mounted (as root)");
		try {
			assertFails("The disk that holds the home folder " + disk.toRealPath().resolve("home") + " is full",
					"--fallow.home=" + disk.resolve("home"));
		}
		finally {
			run("umount", disk.toString());
		}
	}

	@Test
	void saysThatTheConfiguredDatabaseDoesNotAnswer() throws Exception {
		String url = "jdbc:postgresql://localhost:" + unusedPort() + "/fallow";
		assertFails("The configured database " + url + " does not answer",
				"--spring.datasource.url=" + url + "?password=secret", "--spring.datasource.username=fallow_app");
	}

	@Test
	void saysThatTheConfiguredDatabaseRefusesTheSignIn() throws Exception {
		String url = TestServer.shared().url();
		assertFails("The configured database " + url + " refuses the sign-in", "--spring.datasource.url=" + url,
				"--spring.datasource.username=fallow_app", "--spring.datasource.password=wrong");
	}

	@Test
	void refusesTheDemoOnAConfiguredDatabase() throws Exception {
		assertFails("The demo uses a database of its own", "--spring.profiles.active=demo",
				"--spring.datasource.url=" + TestServer.shared().url());
	}

	private void assertFails(String sentence, String... arguments) throws InterruptedException {
		try (FallowProcess fallow = FallowProcess.start(this.folder, arguments)) {
			assertThat(fallow.exitCode()).isEqualTo(1);
			assertThat(fallow.errors()).startsWith(sentence).endsWith(".").hasLineCount(1);
			assertThat(fallow.output()).doesNotContain("\tat ").doesNotContain("ERROR");
		}
	}

	private static int unusedPort() throws Exception {
		try (ServerSocket socket = new ServerSocket(0)) {
			return socket.getLocalPort();
		}
	}

	private static int run(String... command) throws Exception {
		return new ProcessBuilder(command).inheritIO().start().waitFor();
	}

}
