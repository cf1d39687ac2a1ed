package org.fallow.account.web;

import java.time.ZoneId;
import java.util.Objects;

import org.fallow.account.SetUp;
import org.jspecify.annotations.Nullable;

/**
 * What the set-up page sends; a field left out is empty.
 */
class SetUpForm {

	private final String code;

	private final String clubName;

	private final String teamName;

	private final String zone;

	private final String name;

	private final String username;

	private final String password;

	SetUpForm(@Nullable String code, @Nullable String clubName, @Nullable String teamName, @Nullable String zone,
			@Nullable String name, @Nullable String username, @Nullable String password) {
		this.code = Objects.requireNonNullElse(code, "");
		this.clubName = Objects.requireNonNullElse(clubName, "");
		this.teamName = Objects.requireNonNullElse(teamName, "");
		this.zone = Objects.requireNonNullElse(zone, "");
		this.name = Objects.requireNonNullElse(name, "");
		this.username = Objects.requireNonNullElse(username, "");
		this.password = Objects.requireNonNullElse(password, "");
	}

	static SetUpForm blank(ZoneId zone) {
		return new SetUpForm("", "", "", zone.getId(), "", "", "");
	}

	SetUp setUp() {
		return new SetUp(this.code, this.clubName, this.teamName, this.zone, this.name, this.username, this.password);
	}

	public String getCode() {
		return this.code;
	}

	public String getClubName() {
		return this.clubName;
	}

	public String getTeamName() {
		return this.teamName;
	}

	public String getZone() {
		return this.zone;
	}

	public String getName() {
		return this.name;
	}

	public String getUsername() {
		return this.username;
	}

	/** A password is never sent back to the page. */
	public String getPassword() {
		return "";
	}

}
