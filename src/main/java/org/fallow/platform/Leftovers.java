package org.fallow.platform;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * The database processes that an earlier, killed Fallow left in a home. To be used only
 * while holding the home's lock: then every program that runs from the home's binaries is
 * a leftover.
 */
final class Leftovers {

	private static final long PATIENCE_SECONDS = 20;

	private final Home home;

	private final Path pidFile;

	Leftovers(Home home) {
		this.home = home;
		this.pidFile = home.database().resolve("postmaster.pid");
	}

	/**
	 * Stops what is left, waits until it is gone and clears its pid file away, so that
	 * the database can start at once. Committed rows are safe in every case.
	 */
	void stop() throws IOException {
		postmasterOfPidFile().ifPresent(this::refuseForeign);
		running().stream().filter((process) -> !hasParentOfOurs(process)).forEach(Leftovers::requestFastStop);
		if (!goneWithin(PATIENCE_SECONDS)) {
			running().forEach(ProcessHandle::destroyForcibly);
			requireGone();
		}
		Files.deleteIfExists(this.pidFile);
	}

	/** Whether the home's database is being served; a process that is a zombie is not. */
	boolean postmasterRuns() {
		try {
			return postmasterOfPidFile().filter(this::isOurs).isPresent();
		}
		catch (IOException ex) {
			return !running().isEmpty();
		}
	}

	private Optional<ProcessHandle> postmasterOfPidFile() throws IOException {
		if (!Files.exists(this.pidFile)) {
			return Optional.empty();
		}
		List<String> lines = Files.readAllLines(this.pidFile);
		if (lines.isEmpty() || !lines.get(0).strip().matches("\\d{1,18}")) {
			return Optional.empty();
		}
		return ProcessHandle.of(Long.parseLong(lines.get(0).strip()));
	}

	private boolean isOurs(ProcessHandle process) {
		return process.info()
			.command()
			.filter((command) -> Path.of(command).startsWith(this.home.binaries()))
			.isPresent();
	}

	private boolean hasParentOfOurs(ProcessHandle process) {
		return process.parent().filter(this::isOurs).isPresent();
	}

	/**
	 * The pid in the file may belong to any process by now; only a PostgreSQL that was
	 * started by hand on this very folder is in the way.
	 */
	private void refuseForeign(ProcessHandle process) {
		String folder = this.home.database().toString();
		if (!isOurs(process) && process.info().commandLine().filter((line) -> line.contains(folder)).isPresent()) {
			throw new StartFailure("start.own-database-runs-on", folder, Long.toString(process.pid()));
		}
	}

	/**
	 * Asks for PostgreSQL's fast shutdown (SIGINT), which does not wait for clients to
	 * leave.
	 */
	private static void requestFastStop(ProcessHandle postmaster) {
		try {
			new ProcessBuilder("sh", "-c", "kill -INT " + postmaster.pid()).start().waitFor();
		}
		catch (IOException ex) {
			postmaster.destroy();
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
		}
	}

	private List<ProcessHandle> running() {
		return ProcessHandle.allProcesses().filter(this::isOurs).toList();
	}

	private boolean goneWithin(long seconds) {
		long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
		while (!running().isEmpty()) {
			if (System.nanoTime() > end || !pause()) {
				return false;
			}
		}
		return true;
	}

	private static boolean pause() {
		try {
			Thread.sleep(50);
			return true;
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			return false;
		}
	}

	private void requireGone() {
		if (!goneWithin(PATIENCE_SECONDS)) {
			String process = running().stream().map((handle) -> Long.toString(handle.pid())).findFirst().orElse("?");
			throw new StartFailure("start.own-database-does-not-stop", this.home.folder().toString(), process);
		}
	}

}
