package org.fallow.platform;

import org.springframework.aop.Advisor;
import org.springframework.beans.factory.config.BeanDefinition;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Role;

/**
 * Connects an application under test to the shared {@link TestServer}, so that no home
 * folder is touched.
 */
@TestConfiguration(proxyBeanMethods = false)
public class DatabaseForTests {

	@Bean
	static JdbcConnectionDetails applicationConnection() {
		return TestServer.shared().application();
	}

	@Bean
	static FlywayConnectionDetails migrationConnection() {
		return TestServer.shared().migration();
	}

	@Bean
	@Role(BeanDefinition.ROLE_INFRASTRUCTURE)
	static Advisor asWhoItIsAbout() {
		return AsWhoItIsAbout.advisor();
	}

}
