package org.fallow.platform;

import java.util.UUID;

import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

import static org.assertj.core.api.Assertions.assertThat;

/** A status that is there already gets the zone of its person, in a schema of its own. */
class SilentDaysMigrationTests {

	private static final String SCHEMA = "silent_days";

	private final MigrationConnection owner = TestServer.shared().migration();

	private final JdbcClient jdbc = JdbcClient.create(new DriverManagerDataSource(
			this.owner.getJdbcUrl() + "?currentSchema=" + SCHEMA, this.owner.getUsername(), this.owner.getPassword()));

	@AfterEach
	void drop() {
		this.jdbc.sql("drop schema if exists " + SCHEMA + " cascade").update();
	}

	@Test
	void givesEachStatusTheZoneOfItsPerson() {
		migrateTo("23", "public");
		migrateTo("22", SCHEMA);
		UUID berlin = athlete("Europe/Berlin");
		UUID tonga = athlete("Pacific/Tongatapu");

		migrateTo("23", SCHEMA);

		assertThat(zone(berlin)).isEqualTo("Europe/Berlin");
		assertThat(zone(tonga)).isEqualTo("Pacific/Tongatapu");
	}

	private void migrateTo(String version, String schema) {
		Flyway.configure()
			.dataSource(this.owner.getJdbcUrl(), this.owner.getUsername(), this.owner.getPassword())
			.schemas(schema)
			.locations("classpath:db/migration")
			.target(version)
			.load()
			.migrate();
	}

	private UUID athlete(String zone) {
		UUID id = UUID.randomUUID();
		this.jdbc.sql(
				"insert into person (id, name, zone_id, since_day, created_at) values (?, 'Ann', ?, current_date, now())")
			.params(id, zone)
			.update();
		this.jdbc.sql("insert into athlete_status (athlete_id) values (?)").params(id).update();
		return id;
	}

	private String zone(UUID id) {
		return this.jdbc.sql("select zone_id from athlete_status where athlete_id = ?")
			.params(id)
			.query(String.class)
			.single();
	}

}
