package org.fallow.platform;

import java.io.IOException;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.autoconfigure.AutoConfiguration;
import org.springframework.boot.autoconfigure.condition.ConditionalOnMissingBean;
import org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
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

	@Bean
	JdbcConnectionDetails applicationConnection(OwnDatabase database) {
		return new ApplicationConnection(database.url(), Roles.APPLICATION, database.passwords().application());
	}

	@Bean
	FlywayConnectionDetails migrationConnection(OwnDatabase database) {
		return new MigrationConnection(database.url(), Roles.OWNER, database.passwords().owner());
	}

}
