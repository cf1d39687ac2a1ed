package org.fallow.platform;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.util.FileSystemUtils;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A home whose first start was cut short while the database's programs were unpacked
 * starts like any other. The library that starts the database left such a home behind for
 * ever: it found links it had made before and ended with a stack trace.
 */
class ProgramsTests {

	@TempDir
	private Path folder;

	private Home home;

	@BeforeEach
	void open() {
		this.home = Home.open(this.folder.resolve("home"));
	}

	@AfterEach
	void close() throws IOException {
		this.home.close();
	}

	@Test
	void replacesWhatAKillLeftHalfUnpacked() throws IOException {
		Programs.unpack(this.home);
		Path whole = Programs.in(this.home);
		List<String> names = names(whole);
		// as the library leaves it: no mark, some of the links and files
		Files.delete(whole.resolve(".exists"));
		FileSystemUtils.deleteRecursively(whole.resolve("bin"));
		Programs.unpack(this.home);
		assertThat(names(Programs.in(this.home))).isEqualTo(names);
		assertThat(Programs.in(this.home).resolve("bin/postgres")).isExecutable();
	}

	@Test
	void startsTheDatabaseOfAHomeThatWasHalfUnpacked() throws IOException {
		Programs.unpack(this.home);
		Path whole = Programs.in(this.home);
		Files.delete(whole.resolve(".exists"));
		Files.delete(whole.resolve("bin/initdb"));
		Files.createDirectories(this.home.binariesInTheMaking().resolve("PG-half/lib"));
		this.home.close();
		try (OwnDatabase database = OwnDatabase.start(Home.open(this.folder.resolve("home")))) {
			assertThat(database.runs()).isTrue();
			assertThat(this.home.binariesInTheMaking()).doesNotExist();
			try (Stream<Path> folders = Files.list(this.home.binaries())) {
				assertThat(folders).as("the library unpacks nothing beside").hasSize(1);
			}
		}
	}

	@Test
	void replacesAProgramThatAPowerCutLeftShort() throws IOException {
		Programs.unpack(this.home);
		Path program = Programs.in(this.home).resolve("bin/postgres");
		long size = Files.size(program);
		Files.write(program, new byte[10]);
		Programs.unpack(this.home);
		assertThat(Files.size(Programs.in(this.home).resolve("bin/postgres"))).isEqualTo(size);
	}

	@Test
	void leavesWholeProgramsAsTheyAre() throws IOException {
		Programs.unpack(this.home);
		Path program = Programs.in(this.home).resolve("bin/postgres");
		FileTime past = FileTime.from(Instant.parse("2020-02-02T02:02:02Z"));
		Files.setLastModifiedTime(program, past);
		Programs.unpack(this.home);
		assertThat(Files.getLastModifiedTime(program)).isEqualTo(past);
	}

	private static List<String> names(Path folder) throws IOException {
		try (Stream<Path> all = Files.walk(folder)) {
			return all.map((one) -> folder.relativize(one).toString()).sorted().toList();
		}
	}

}
