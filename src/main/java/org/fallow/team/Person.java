package org.fallow.team;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * A human being Fallow knows.
 */
@Entity
public class Person {

	@Id
	private UUID id;

	private String name;

	@Column(name = "zone_id")
	private String zone;

	@Nullable private LocalDate birthDate;

	private LocalDate sinceDay;

	private Instant createdAt;

	@SuppressWarnings("NullAway.Init")
	protected Person() {
	}

	Person(UUID id, String name, ZoneId zone, @Nullable LocalDate birthDate, Instant createdAt) {
		this.id = id;
		this.name = name;
		this.zone = zone.getId();
		this.birthDate = birthDate;
		this.sinceDay = LocalDate.ofInstant(createdAt, zone);
		this.createdAt = createdAt;
	}

	void wasBorn(LocalDate day) {
		if (this.birthDate == null) {
			this.birthDate = day;
		}
	}

	public PersonId id() {
		return new PersonId(this.id);
	}

	public String name() {
		return this.name;
	}

	public ZoneId zone() {
		return ZoneId.of(this.zone);
	}

	public @Nullable LocalDate birthDate() {
		return this.birthDate;
	}

	/**
	 * The civil day, in the person's zone, the person was created here.
	 * @return the day
	 */
	public LocalDate since() {
		return this.sinceDay;
	}

	Instant createdAt() {
		return this.createdAt;
	}

}
