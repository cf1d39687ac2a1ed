package org.fallow.team;

import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import org.jspecify.annotations.Nullable;

/**
 * That a person is an athlete of a team, and whether its coaches see the data.
 */
@Entity
class Membership {

	@EmbeddedId
	private Key key;

	@Nullable private UUID groupId;

	@Nullable private String externalCode;

	private boolean shares;

	private Instant joinedAt;

	@Nullable private Instant leftAt;

	@SuppressWarnings("NullAway.Init")
	protected Membership() {
	}

	Membership(Key key, @Nullable UUID groupId, @Nullable String externalCode, Instant joinedAt) {
		this.key = key;
		this.groupId = groupId;
		this.externalCode = externalCode;
		this.shares = true;
		this.joinedAt = joinedAt;
	}

	void rejoin(@Nullable UUID newGroup, Instant at) {
		this.groupId = newGroup;
		this.shares = true;
		this.joinedAt = at;
		this.leftAt = null;
	}

	Key key() {
		return this.key;
	}

	@Nullable UUID groupId() {
		return this.groupId;
	}

	@Nullable String externalCode() {
		return this.externalCode;
	}

	boolean shares() {
		return this.shares;
	}

	Instant joinedAt() {
		return this.joinedAt;
	}

	@Nullable Instant leftAt() {
		return this.leftAt;
	}

	@Embeddable
	record Key(UUID personId, UUID teamId) implements Serializable {
	}

}
