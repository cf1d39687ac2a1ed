package org.fallow.platform;

import java.time.Clock;

import javax.sql.DataSource;

import org.springframework.beans.factory.config.BeanFactoryPostProcessor;
import org.springframework.boot.jpa.autoconfigure.EntityManagerFactoryBuilderCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Profile;
import org.springframework.core.env.Environment;
import org.springframework.core.task.SimpleAsyncTaskExecutor;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.session.config.SessionRepositoryCustomizer;
import org.springframework.session.jdbc.JdbcIndexedSessionRepository;
import org.springframework.session.jdbc.PostgreSqlJdbcIndexedSessionRepositoryCustomizer;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionOperations;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.util.StringUtils;

/** The clock, and what the framework's own use of the database needs. */
@Configuration(proxyBeanMethods = false)
class PlatformConfiguration {

	/** The one clock: tests replace it, nothing else asks for the time. */
	@Bean
	Clock clock() {
		return Clock.systemUTC();
	}

	/**
	 * Sessions are read before anybody is known, so they get transactions of their own
	 * which no transaction listener takes part in: a listener that asks for the signed-in
	 * person would otherwise load the session while it is being loaded.
	 */
	@Bean
	TransactionOperations springSessionTransactionOperations(DataSource dataSource) {
		TransactionTemplate template = new TransactionTemplate(new JdbcTransactionManager(dataSource));
		template.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
		return template;
	}

	/**
	 * Two clicks of one browser may store the same thing in its session at the same time:
	 * the later one then counts, where the library's own way would fail, after the page
	 * has done its work.
	 */
	@Bean
	static SessionRepositoryCustomizer<JdbcIndexedSessionRepository> sessionsOfTwoClicks() {
		return new PostgreSqlJdbcIndexedSessionRepositoryCustomizer();
	}

	/**
	 * Tables are compared with the entities beside the making of what does not need them;
	 * the start waits for it, and fails when it does, before any page is served.
	 */
	@Bean
	static EntityManagerFactoryBuilderCustomizer entitiesBesideTheRest() {
		return (builder) -> builder.setBootstrapExecutor(new SimpleAsyncTaskExecutor("entities-"));
	}

	/** The demo wipes its database, so it must never meet a configured one. */
	@Bean
	@Profile("demo")
	static BeanFactoryPostProcessor demoNeedsItsOwnDatabase(Environment environment) {
		return (beans) -> {
			if (StringUtils.hasText(environment.getProperty("spring.datasource.url"))) {
				throw new StartFailure("start.demo-needs-own-database");
			}
		};
	}

}
