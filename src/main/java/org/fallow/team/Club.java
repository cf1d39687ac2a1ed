package org.fallow.team;

import java.time.Instant;
import java.util.UUID;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;

/**
 * A club: teams under one set of return rules.
 */
@Entity
public class Club {

	@Id
	private UUID id;

	private String name;

	private Instant createdAt;

	@SuppressWarnings("NullAway.Init")
	protected Club() {
	}

	Club(UUID id, String name, Instant createdAt) {
		this.id = id;
		this.name = name;
		this.createdAt = createdAt;
	}

	public UUID id() {
		return this.id;
	}

	public String name() {
		return this.name;
	}

}
