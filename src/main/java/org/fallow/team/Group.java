package org.fallow.team;

import java.util.UUID;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/**
 * A group of a team that trains together.
 */
@Entity
@Table(name = "training_group")
public class Group {

	@Id
	private UUID id;

	private UUID teamId;

	private String name;

	@SuppressWarnings("NullAway.Init")
	protected Group() {
	}

	Group(UUID id, UUID teamId, String name) {
		this.id = id;
		this.teamId = teamId;
		this.name = name;
	}

	public UUID id() {
		return this.id;
	}

	public UUID teamId() {
		return this.teamId;
	}

	public String name() {
		return this.name;
	}

}
