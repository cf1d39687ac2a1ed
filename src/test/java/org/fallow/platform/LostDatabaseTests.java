package org.fallow.platform;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Fallow started as an operator starts it, whose database is then killed for real, or
 * whose disk fills for real.
 */
class LostDatabaseTests {

	private static final int PATIENCE_SECONDS = 120;

	private final HttpClient client = HttpClient.newHttpClient();

	@TempDir
	private Path folder;

	@Test
	void startsItsDatabaseAgainAndKeepsWhatWasTyped() throws Exception {
		try (FallowProcess fallow = start("15s,15s,15s")) {
			String address = fallow.address();
			await(address + "/actuator/health/readiness", (answer) -> answer.statusCode() == 200);
			killPostmaster();
			HttpResponse<String> down = await(address + "/actuator/health/readiness",
					(answer) -> answer.body().contains("attempt 1 of 3"));
			assertThat(down.statusCode()).isEqualTo(503);
			assertThat(get(address + "/actuator/health/liveness").statusCode()).isEqualTo(200);
			HttpResponse<String> kept = post(address + "/morning", "day=2026-03-18&note=%C3%A4%3C&_csrf=mine");
			assertThat(kept.statusCode()).isEqualTo(503);
			assertThat(kept.body()).contains("Nothing of what you entered was saved")
				.contains("<form method=\"post\" action=\"/morning\">")
				.contains("name=\"note\" value=\"ä&lt;\"")
				.contains("name=\"_csrf\" value=\"mine\"");
			assertThat(kept.headers().firstValue("Content-Security-Policy")).isPresent();
			assertThat(kept.headers().firstValue("Cache-Control").orElse("")).contains("no-store");
			await(address + "/actuator/health/readiness", (answer) -> answer.statusCode() == 200);
			assertThat(get(address + "/set-up").statusCode()).isEqualTo(200);
			assertThat(fallow.output()).contains("Fallow's own database runs again, after attempt 1");
		}
	}

	@Test
	void endsWhenItsDatabaseCannotBeStartedAgain() throws Exception {
		try (FallowProcess fallow = start("0s,0s,0s")) {
			await(fallow.address() + "/actuator/health/readiness", (answer) -> answer.statusCode() == 200);
			Files.writeString(home().resolve("database/postmaster.opts"), "nothing to be started\n");
			killPostmaster();
			assertThat(fallow.exitCode()).isEqualTo(1);
			assertThat(fallow.errors()).startsWith("Fallow's own database stopped and could not be started again")
				.endsWith(".")
				.hasLineCount(1);
			assertThat(fallow.output()).contains("Attempt 3 of 3 to start Fallow's own database failed");
		}
	}

	/**
	 * The disk fills while entries come. What PostgreSQL does then is its own affair: it
	 * refuses, or it stops. Fallow says so in both cases and works again once there is
	 * room.
	 */
	@Test
	void worksAgainAfterAFullDisk() throws Exception {
		Path disk = Files.createDirectory(this.folder.resolve("disk"));
		Assumptions.assumeTrue(run("mount", "-t", "tmpfs", "-o", "size=420m", "tmpfs", disk.toString()) == 0,
				"a full disk is tried only where a small file system may be mounted (as root)");
		try (FallowProcess fallow = FallowProcess.start(this.folder, "--fallow.home=" + disk.resolve("home"),
				"--fallow.database.restart-after=1s,20s,60s,60s,60s")) {
			fallow.awaitStarted();
			String address = fallow.address();
			await(address + "/actuator/health", (answer) -> answer.statusCode() == 200);
			Path filling = disk.resolve("filling");
			run("dd", "if=/dev/zero", "of=" + filling, "bs=1M", "status=none");
			HttpResponse<String> full = await(address + "/actuator/health",
					(answer) -> answer.body().contains("disk is full"));
			assertThat(full.statusCode()).isEqualTo(503);
			assertThat(fallow.output()).contains("The disk of the home is full");
			Files.delete(filling);
			await(address + "/actuator/health", (answer) -> answer.statusCode() == 200);
			assertThat(get(address + "/set-up").statusCode()).isEqualTo(200);
		}
		finally {
			run("umount", "-l", disk.toString());
		}
	}

	private FallowProcess start(String waits) throws InterruptedException {
		FallowProcess fallow = FallowProcess.start(this.folder, "--fallow.home=" + home(),
				"--fallow.database.restart-after=" + waits);
		fallow.awaitStarted();
		return fallow;
	}

	private Path home() {
		return this.folder.resolve("home");
	}

	private void killPostmaster() throws IOException {
		List<String> pidFile = Files.readAllLines(home().resolve("database/postmaster.pid"));
		ProcessHandle.of(Long.parseLong(pidFile.get(0))).ifPresent(ProcessHandle::destroyForcibly);
	}

	private HttpResponse<String> await(String address, Predicate<HttpResponse<String>> wanted) throws Exception {
		long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
		HttpResponse<String> answer = get(address);
		while (!wanted.test(answer)) {
			assertThat(System.nanoTime()).as(address + " says " + answer.body()).isLessThan(end);
			Thread.sleep(100);
			answer = get(address);
		}
		return answer;
	}

	private HttpResponse<String> get(String address) throws Exception {
		return this.client.send(request(address).GET().build(), BodyHandlers.ofString());
	}

	private HttpResponse<String> post(String address, String form) throws Exception {
		return this.client.send(request(address).header("Content-Type", "application/x-www-form-urlencoded")
			.POST(BodyPublishers.ofString(form))
			.build(), BodyHandlers.ofString());
	}

	private static HttpRequest.Builder request(String address) {
		String accept = address.contains("/actuator/") ? "application/json" : "text/html";
		return HttpRequest.newBuilder(URI.create(address)).timeout(Duration.ofSeconds(60)).header("Accept", accept);
	}

	private static int run(String... command) throws Exception {
		return new ProcessBuilder(command).start().waitFor();
	}

}
