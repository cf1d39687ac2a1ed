package org.fallow.platform;

import java.util.List;
import java.util.UUID;

import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;

import static org.assertj.core.api.Assertions.assertThat;

/** What a club had is carried over to each of its teams, in a schema of its own. */
class RulesByTeamMigrationTests {

	private static final String SCHEMA = "rules_by_team";

	private final MigrationConnection owner = TestServer.shared().migration();

	private final JdbcClient jdbc = JdbcClient.create(new DriverManagerDataSource(
			this.owner.getJdbcUrl() + "?currentSchema=" + SCHEMA, this.owner.getUsername(), this.owner.getPassword()));

	@AfterEach
	void drop() {
		this.jdbc.sql("drop schema if exists " + SCHEMA + " cascade").update();
	}

	@Test
	void givesEachTeamTheRuleSetsOfItsClub() {
		migrateTo("6");
		UUID club = club("One", 2);
		List<UUID> teams = List.of(team(club, "A"), team(club, "B"));
		UUID other = club("Other", 1);
		UUID third = team(other, "C");
		migrateTo("7");
		for (UUID team : teams) {
			assertThat(versions(team)).containsExactly("1 text 1 1970-01-01", "2 text 2 1970-01-02");
		}
		assertThat(versions(third)).containsExactly("1 text 1 1970-01-01");
		assertThat(this.jdbc.sql("select count(*) from rule_set where written_by is not null or reason is not null")
			.query(Integer.class)
			.single()).isZero();
	}

	private void migrateTo(String version) {
		Flyway.configure()
			.dataSource(this.owner.getJdbcUrl(), this.owner.getUsername(), this.owner.getPassword())
			.schemas(SCHEMA)
			.locations("classpath:db/migration")
			.target(version)
			.load()
			.migrate();
	}

	private UUID club(String name, int versions) {
		UUID id = UUID.randomUUID();
		this.jdbc.sql("insert into club (id, name, created_at) values (?, ?, now())").params(id, name).update();
		for (int version = 1; version <= versions; version++) {
			this.jdbc.sql("""
					insert into rule_set (club_id, version, hash, canonical, effective_from, written_at)
					values (?, ?, repeat('0', 64), ?, date '1969-12-31' + ?, now())""")
				.params(id, version, "text " + version, version)
				.update();
		}
		return id;
	}

	private UUID team(UUID club, String name) {
		UUID id = UUID.randomUUID();
		this.jdbc.sql("insert into team (id, club_id, name, zone_id) values (?, ?, ?, 'UTC')")
			.params(id, club, name)
			.update();
		return id;
	}

	private List<String> versions(UUID team) {
		return this.jdbc.sql(
				"select version || ' ' || canonical || ' ' || effective_from from rule_set where team_id = ? order by 1")
			.param(team)
			.query(String.class)
			.list();
	}

}
