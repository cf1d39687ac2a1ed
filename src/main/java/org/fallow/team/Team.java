package org.fallow.team;

import java.time.ZoneId;
import java.util.UUID;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;

/**
 * A team of a club.
 */
@Entity
public class Team {

	@Id
	private UUID id;

	private UUID clubId;

	private String name;

	@Column(name = "zone_id")
	private String zone;

	@SuppressWarnings("NullAway.Init")
	protected Team() {
	}

	Team(UUID id, UUID clubId, String name, ZoneId zone) {
		this.id = id;
		this.clubId = clubId;
		this.name = name;
		this.zone = zone.getId();
	}

	public UUID id() {
		return this.id;
	}

	public UUID clubId() {
		return this.clubId;
	}

	public String name() {
		return this.name;
	}

	/**
	 * The zone new athletes of the team get.
	 * @return the zone
	 */
	public ZoneId zone() {
		return ZoneId.of(this.zone);
	}

}
