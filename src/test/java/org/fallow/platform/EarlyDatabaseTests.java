package org.fallow.platform;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.util.List;
import java.util.Map;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.context.support.GenericApplicationContext;
import org.springframework.core.env.MapPropertySource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

class EarlyDatabaseTests {

	@Test
	void aStartThatNeverAsksForItLeavesNothingRunning(@TempDir Path folder) throws IOException {
		try (GenericApplicationContext context = started(Map.of("fallow.home", folder.toString()))) {
			context.getDefaultListableBeanFactory().destroySingletons();
		}

		assertThat(programsOf(folder)).isEmpty();
		Home.open(folder).close();
	}

	@Test
	void whoTakesItClosesIt(@TempDir Path folder) throws Exception {
		try (GenericApplicationContext context = started(Map.of("fallow.home", folder.toString()))) {
			OwnDatabase database = context.getBeanFactory().getBean(EarlyDatabase.Start.class).take();
			context.getDefaultListableBeanFactory().destroySingletons();

			try (Connection connection = DriverManager.getConnection(database.url(), Roles.APPLICATION,
					database.passwords().application())) {
				assertThat(connection.isValid(5)).isTrue();
			}
			database.close();
		}

		assertThat(programsOf(folder)).isEmpty();
	}

	@Test
	void whatGoesWrongIsToldToWhoTakesIt(@TempDir Path folder) throws IOException {
		Path file = Files.createFile(folder.resolve("file"));
		try (GenericApplicationContext context = started(Map.of("fallow.home", file.toString()))) {
			EarlyDatabase.Start start = context.getBeanFactory().getBean(EarlyDatabase.Start.class);

			assertThatExceptionOfType(StartFailure.class).isThrownBy(start::take);
			context.getDefaultListableBeanFactory().destroySingletons();
		}
	}

	@Test
	void aConfiguredDatabaseIsUsedInstead(@TempDir Path folder) {
		Path home = folder.resolve("home");
		try (GenericApplicationContext context = started(Map.of("fallow.home", home.toString(), "spring.datasource.url",
				"jdbc:postgresql://localhost/fallow"))) {
			assertThat(context.getBeanFactory().getBeanNamesForType(EarlyDatabase.Start.class)).isEmpty();
		}
		assertThat(home).doesNotExist();
	}

	private static GenericApplicationContext started(Map<String, Object> settings) {
		GenericApplicationContext context = new GenericApplicationContext();
		context.getEnvironment().getPropertySources().addFirst(new MapPropertySource("settings", settings));
		new EarlyDatabase().initialize(context);
		return context;
	}

	private static List<ProcessHandle> programsOf(Path folder) {
		return ProcessHandle.allProcesses()
			.filter((process) -> process.info()
				.command()
				.filter((command) -> command.startsWith(folder.toString()))
				.isPresent())
			.toList();
	}

}
