package org.fallow.platform;

import java.sql.Connection;
import java.sql.SQLException;

import javax.sql.DataSource;

import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.boot.health.contributor.Status;
import org.springframework.stereotype.Component;

/**
 * Whether pages can be served: DOWN while the database cannot be reached, with a sentence
 * that says what is being done. It belongs to readiness; Fallow is alive all the same.
 */
@Component("databaseHealthIndicator")
class DatabaseHealth implements HealthIndicator {

	private static final int PATIENCE_SECONDS = 5;

	private final DataSource source;

	private final DatabaseState state;

	DatabaseHealth(DataSource source, DatabaseState state) {
		this.source = source;
		this.state = state;
	}

	@Override
	public Health health() {
		return this.state.away().map(DatabaseHealth::away).orElseGet(this::asked);
	}

	private static Health away(DatabaseState.Attempt attempt) {
		return down("Fallow's own database has stopped and is being started again, attempt " + attempt.number() + " of "
				+ attempt.of());
	}

	private Health asked() {
		try (Connection connection = this.source.getConnection()) {
			return connection.isValid(PATIENCE_SECONDS) ? Health.up().build() : down("The database does not answer");
		}
		catch (SQLException ex) {
			return down("The database does not answer");
		}
	}

	static Health down(String sentence) {
		return Health.status(new Status(Status.DOWN.getCode(), sentence)).build();
	}

}
