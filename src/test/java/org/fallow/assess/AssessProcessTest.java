package org.fallow.assess;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;

/** The command as it is started: a Java process of its own. */
class AssessProcessTest {

	private static final int PATIENCE_SECONDS = 120;

	@TempDir
	private Path folder;

	@Test
	void startsNoServerAndEndsWithItsExitCode() throws Exception {
		Path in = Files.writeString(this.folder.resolve("mornings.csv"), "person,date,rhr_bpm\nA,2026-01-01,50\n");
		Path out = this.folder.resolve("out.csv");
		assertThat(exitCode("--in", in.toString(), "--out", out.toString())).isEqualTo(AssessCommand.DONE);
		assertThat(Files.readAllLines(out)).hasSize(2);
		assertThat(said()).contains("1 days of 1 people").doesNotContain("Spring", "Started");
		assertThat(this.folder.resolve("home")).doesNotExist();
	}

	@Test
	void endsWithAnErrorWhenTheInputIsBad() throws Exception {
		Path in = Files.writeString(this.folder.resolve("mornings.csv"), "person,date,rhr_bpm\nA,2026-01-01,x\n");
		assertThat(exitCode("--in", in.toString(), "--out", this.folder.resolve("out.csv").toString()))
			.isEqualTo(AssessCommand.BAD_INPUT);
		assertThat(exitCode("--in", in.toString())).isEqualTo(AssessCommand.BAD_USAGE);
	}

	/** A German machine is answered in German; one of neither language in English. */
	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "de | 1 Tage von 1 Personen in \\d+,\\d Sekunden",
			"fr | 1 days of 1 people assessed in \\d+\\.\\d seconds" })
	void speaksTheLanguageOfTheMachine(String language, String said) throws Exception {
		Path in = Files.writeString(this.folder.resolve("mornings.csv"), "person,date,rhr_bpm\nA,2026-01-01,50.5\n");
		Path out = this.folder.resolve("out.csv");
		assertThat(exitCodeIn(language, "--in", in.toString(), "--out", out.toString())).isEqualTo(AssessCommand.DONE);
		assertThat(said()).containsPattern(said);
		Path english = this.folder.resolve("english.csv");
		exitCode("--in", in.toString(), "--out", english.toString());
		assertThat(Files.readAllLines(out)).as("files are the same everywhere").isEqualTo(Files.readAllLines(english));
	}

	private int exitCode(String... args) throws Exception {
		return exitCodeIn("en", args);
	}

	private int exitCodeIn(String language, String... args) throws Exception {
		String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
		ProcessBuilder builder = new ProcessBuilder(java, "-XX:TieredStopAtLevel=1", "-Duser.language=" + language,
				"-Duser.home=" + this.folder.resolve("home"), "-cp", System.getProperty("java.class.path"),
				"org.fallow.FallowApplication", AssessCommand.NAME);
		builder.command().addAll(List.of(args));
		Process process = builder.redirectErrorStream(true).redirectOutput(outputFile().toFile()).start();
		if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
			process.destroyForcibly();
			throw new AssertionError("the command did not end; it said " + said());
		}
		return process.exitValue();
	}

	private String said() throws Exception {
		return Files.readString(outputFile());
	}

	private Path outputFile() {
		return this.folder.resolve("said");
	}

}
