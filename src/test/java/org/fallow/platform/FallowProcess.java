package org.fallow.platform;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Fallow in a Java process of its own, as an operator starts it: without the test classes
 * and on any free port.
 */
final class FallowProcess implements AutoCloseable {

	private static final int PATIENCE_SECONDS = 120;

	private final Process process;

	private final Path output;

	private final Path errors;

	private FallowProcess(Process process, Path output, Path errors) {
		this.process = process;
		this.output = output;
		this.errors = errors;
	}

	static FallowProcess start(Path folder, String... arguments) {
		Path output = folder.resolve("output");
		Path errors = folder.resolve("errors");
		List<String> command = new ArrayList<>(
				List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
						"-cp", classPath(), "org.fallow.FallowApplication", "--server.port=0"));
		command.addAll(List.of(arguments));
		try {
			Process process = new ProcessBuilder(command).redirectOutput(output.toFile())
				.redirectError(errors.toFile())
				.start();
			return new FallowProcess(process, output, errors);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static String classPath() {
		return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
			.filter((entry) -> !entry.endsWith("test-classes"))
			.collect(Collectors.joining(File.pathSeparator));
	}

	/** Waits for the process to end by itself and hands its exit code back. */
	int exitCode() throws InterruptedException {
		if (!this.process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
			throw new AssertionError("Fallow did not end; it said " + output());
		}
		return this.process.exitValue();
	}

	/** Waits until the pages are served. */
	void awaitStarted() throws InterruptedException {
		long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
		while (!output().contains("Started FallowApplication")) {
			if (!this.process.isAlive() || System.nanoTime() > end) {
				throw new AssertionError("Fallow did not start; it said " + output() + errors());
			}
			Thread.sleep(100);
		}
	}

	/** Where the pages are, once they are served. */
	String address() {
		Matcher port = Pattern.compile("Tomcat started on port (\\d+)").matcher(output());
		if (!port.find()) {
			throw new AssertionError("Fallow serves no pages; it said " + output());
		}
		return "http://localhost:" + port.group(1);
	}

	String output() {
		return read(this.output);
	}

	/** Standard error without what the Java launcher itself says there. */
	String errors() {
		return read(this.errors).lines()
			.filter((line) -> !line.startsWith("Picked up "))
			.collect(Collectors.joining("\n"));
	}

	private static String read(Path file) {
		try {
			return Files.readString(file);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/** Ends Fallow at once, as {@code kill -9} does. */
	void kill() throws InterruptedException {
		this.process.destroyForcibly().waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
	}

	/** Asks Fallow to stop, as a service manager does, and waits for it. */
	@Override
	public void close() throws InterruptedException {
		this.process.destroy();
		this.process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
	}

}
