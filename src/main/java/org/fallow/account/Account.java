package org.fallow.account;

import java.time.Instant;
import java.util.UUID;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import org.jspecify.annotations.Nullable;

/**
 * How a person signs in.
 */
@Entity
class Account {

	@Id
	private UUID personId;

	private String username;

	private String passwordHash;

	private Instant createdAt;

	/** A language's tag; null for what the browser wishes. */
	private @Nullable String language;

	/** Who made the link by which the password was set; null for an own choice. */
	private @Nullable String linkBy;

	private @Nullable Instant linkUsedAt;

	private @Nullable Instant signedInAt;

	@SuppressWarnings("NullAway.Init")
	protected Account() {
	}

	Account(UUID personId, String username, String passwordHash, Instant createdAt) {
		this.personId = personId;
		this.username = username;
		this.passwordHash = passwordHash;
		this.createdAt = createdAt;
	}

	void rename(String newUsername) {
		this.username = newUsername;
	}

	void changePassword(String newHash) {
		this.passwordHash = newHash;
		this.linkBy = null;
		this.linkUsedAt = null;
	}

	/** Sets a password by a link that somebody else had made. */
	void changePassword(String newHash, String maker, Instant at) {
		this.passwordHash = newHash;
		this.linkBy = maker;
		this.linkUsedAt = at;
	}

	/** Notes a sign-in; when the one before was. */
	@Nullable Instant signIn(Instant at) {
		Instant before = this.signedInAt;
		this.signedInAt = at;
		return before;
	}

	@Nullable String linkBy() {
		return this.linkBy;
	}

	@Nullable Instant linkUsedAt() {
		return this.linkUsedAt;
	}

	void speak(@Nullable String newLanguage) {
		this.language = newLanguage;
	}

	@Nullable String language() {
		return this.language;
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

	Instant createdAt() {
		return this.createdAt;
	}

}
