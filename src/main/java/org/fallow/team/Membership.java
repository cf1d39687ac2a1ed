package org.fallow.team;

import java.io.Serializable;
import java.util.UUID;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import org.jspecify.annotations.Nullable;

/**
 * That a person is a coach or an athlete of a team.
 */
@Entity
class Membership {

	@EmbeddedId
	private Key key;

	@Nullable private UUID groupId;

	@Nullable private String externalCode;

	@SuppressWarnings("NullAway.Init")
	protected Membership() {
	}

	Membership(Key key, @Nullable UUID groupId, @Nullable String externalCode) {
		this.key = key;
		this.groupId = groupId;
		this.externalCode = externalCode;
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

	@Embeddable
	record Key(UUID personId, UUID teamId, @Enumerated(EnumType.STRING) Role role) implements Serializable {
	}

}
