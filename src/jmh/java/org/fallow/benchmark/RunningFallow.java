package org.fallow.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;

import javax.sql.DataSource;

import com.sun.management.OperatingSystemMXBean;

import org.fallow.FallowApplication;

import org.springframework.beans.factory.support.BeanDefinitionRegistry;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.context.TypeExcludeFilter;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.web.server.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.support.GenericApplicationContext;
import org.springframework.core.type.classreading.MetadataReader;
import org.springframework.core.type.classreading.MetadataReaderFactory;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

/**
 * Fallow on its own database in a folder, within this JVM and on any free port, at seven
 * in the morning of a day that stands still. The job of the silent days is left out: it
 * would go through a million athletes beside what is measured.
 */
final class RunningFallow implements AutoCloseable {

	private final ConfigurableApplicationContext context;

	private final ProcessHandle database;

	private RunningFallow(ConfigurableApplicationContext context, ProcessHandle database) {
		this.context = context;
		this.database = database;
	}

	static RunningFallow start(Path home, LocalDate day, String... settings) {
		Clock clock = Clock.fixed(day.atTime(LocalTime.of(7, 0)).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
		SpringApplication application = new SpringApplication(FallowApplication.class);
		application.addInitializers((context) -> {
			((GenericApplicationContext) context).registerBean("clockThatStands", Clock.class, () -> clock,
					(bean) -> bean.setPrimary(true));
			context.getBeanFactory().registerSingleton("noTests", new NoTests());
			context.addBeanFactoryPostProcessor(
					(beans) -> ((BeanDefinitionRegistry) beans).removeBeanDefinition("silentDays"));
		});
		String[] arguments = new String[settings.length + 5];
		arguments[0] = "--fallow.home=" + home.toAbsolutePath();
		arguments[1] = "--server.port=0";
		arguments[2] = "--spring.jmx.enabled=false";
		// a kept database may be of before a migration of a lower number, or of before it was edited
		arguments[3] = "--spring.flyway.out-of-order=true";
		arguments[4] = "--spring.flyway.validate-on-migrate=false";
		System.arraycopy(settings, 0, arguments, 5, settings.length);
		return new RunningFallow(application.run(arguments), database(home));
	}

	<T> T bean(Class<T> type) {
		return this.context.getBean(type);
	}

	int port() {
		return Objects.requireNonNull(((WebServerApplicationContext) this.context).getWebServer()).getPort();
	}

	/** The database as its owner, whom no policy binds. */
	DataSource owner() {
		FlywayConnectionDetails owner = bean(FlywayConnectionDetails.class);
		return new DriverManagerDataSource(owner.getJdbcUrl(), Objects.requireNonNull(owner.getUsername()),
				Objects.requireNonNull(owner.getPassword()));
	}

	/**
	 * Processor time that this JVM and this Fallow's database have taken.
	 * @return milliseconds since their beginnings; that of the database in steps of ten
	 */
	double worked() {
		double own = ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime() / 1e6;
		return own + this.database.children()
			.mapToDouble((one) -> one.info().totalCpuDuration().map(Duration::toMillis).orElse(0L))
			.sum();
	}

	private static ProcessHandle database(Path home) {
		try {
			List<String> lines = Files.readAllLines(home.resolve("database").resolve("postmaster.pid"));
			return ProcessHandle.of(Long.parseLong(lines.get(0).strip())).orElseThrow();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	@Override
	public void close() {
		this.context.close();
	}

	/** Tests lie in the packages of what they test, where the application looks for its parts. */
	private static final class NoTests extends TypeExcludeFilter {

		@Override
		public boolean match(MetadataReader reader, MetadataReaderFactory factory) {
			return reader.getResource().toString().contains("test-classes");
		}

		@Override
		public boolean equals(Object other) {
			return other instanceof NoTests;
		}

		@Override
		public int hashCode() {
			return NoTests.class.hashCode();
		}

	}

}
