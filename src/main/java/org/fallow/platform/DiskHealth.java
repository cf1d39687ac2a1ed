package org.fallow.platform;

import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/**
 * DOWN while the database's disk is full: pages can be read, but entries are refused.
 * Below that it is UP; the log and the owner's page say when room becomes short.
 */
@Component("diskHealthIndicator")
class DiskHealth implements HealthIndicator {

	private final DatabaseState state;

	DiskHealth(DatabaseState state) {
		this.state = state;
	}

	@Override
	public Health health() {
		return (this.state.disk() == DiskRoom.Level.FULL)
				? DatabaseHealth.down("The database's disk is full: pages can be read, entries are refused")
				: Health.up().build();
	}

}
