package org.fallow.account;

import java.time.Instant;
import java.util.UUID;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;

/**
 * How a person signs in.
 */
@Entity
class Account {

	@Id
	private UUID personId;

	private String username;

	private String passwordHash;

	private boolean oneTime;

	private Instant createdAt;

	@SuppressWarnings("NullAway.Init")
	protected Account() {
	}

	Account(UUID personId, String username, String passwordHash, boolean oneTime, Instant createdAt) {
		this.personId = personId;
		this.username = username;
		this.passwordHash = passwordHash;
		this.oneTime = oneTime;
		this.createdAt = createdAt;
	}

	void change(String newUsername, String newHash, boolean newOneTime) {
		this.username = newUsername;
		this.passwordHash = newHash;
		this.oneTime = newOneTime;
	}

	UUID personId() {
		return this.personId;
	}

	String username() {
		return this.username;
	}

	String passwordHash() {
		return this.passwordHash;
	}

	boolean isOneTime() {
		return this.oneTime;
	}

	Instant createdAt() {
		return this.createdAt;
	}

}
