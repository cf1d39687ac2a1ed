package org.fallow.platform;

import java.io.IOException;
import java.time.Duration;
import java.util.List;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.AutoConfiguration;
import org.springframework.boot.autoconfigure.condition.ConditionalOnMissingBean;
import org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Conditional;
import org.springframework.core.env.Environment;

/**
 * Starts Fallow's own database when none is configured, and connects the application as
 * {@code fallow_app} and Flyway as {@code fallow_owner}.
 */
@AutoConfiguration(before = { DataSourceAutoConfiguration.class, FlywayAutoConfiguration.class })
@Conditional(NoDatabaseConfigured.class)
@ConditionalOnMissingBean(JdbcConnectionDetails.class)
class OwnDatabaseConfiguration {

	@Bean(destroyMethod = "close")
	OwnDatabase ownDatabase(Environment environment, ObjectProvider<EarlyDatabase.Start> early) throws IOException {
		EarlyDatabase.Start begun = early.getIfAvailable();
		return (begun != null) ? begun.take() : OwnDatabase.start(HomeChoice.from(environment));
	}

	/**
	 * Begun with the first bean that may use the database, so that it is not left alone.
	 */
	@Bean(initMethod = "begin", destroyMethod = "close")
	DatabaseWatch databaseWatch(OwnDatabase database, DatabaseState state, ConfigurableApplicationContext context,
			@Value("${fallow.database.restart-after}") List<Duration> waits) {
		return new DatabaseWatch(database, state, waits, () -> end(context, why(database, state)));
	}

	private static String why(OwnDatabase database, DatabaseState state) {
		return (state.disk() == DiskRoom.Level.FULL)
				? StartSentences.sentence("run.own-database-disk-full", database.folder())
				: StartSentences.sentence("run.own-database-gone", database.log());
	}

	/**
	 * On a thread of its own, for the end waits until the watch has stopped; and no
	 * daemon as the watch is one, or the machine could be gone before it says why.
	 */
	private static void end(ConfigurableApplicationContext context, String sentence) {
		Thread last = new Thread(() -> {
			System.err.println(sentence);
			System.exit(SpringApplication.exit(context, () -> 1));
		}, "own-database-gone");
		last.setDaemon(false);
		last.start();
	}

	@Bean
	JdbcConnectionDetails applicationConnection(OwnDatabase database) {
		return new ApplicationConnection(database.url(), Roles.APPLICATION, database.passwords().application());
	}

	@Bean
	FlywayConnectionDetails migrationConnection(OwnDatabase database) {
		return new MigrationConnection(database.url(), Roles.OWNER, database.passwords().owner());
	}

}
