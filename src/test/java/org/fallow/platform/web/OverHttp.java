package org.fallow.platform.web;

import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/**
 * Fallow on a real port, with a coach of one team and an athlete of another: what the
 * server answers by itself shows only there.
 */
@DatabaseTest(webEnvironment = WebEnvironment.RANDOM_PORT)
@Import({ SettableClock.class, FaultyPage.class })
abstract class OverHttp {

	static final String PASSWORD = "a long enough sentence";

	@Autowired
	protected People people;

	@Autowired
	protected Accounts accounts;

	@Autowired
	protected SettableClock clock;

	@LocalServerPort
	protected int port;

	protected Team team;

	protected String coachName;

	protected Athlete stranger;

	@BeforeEach
	void makePeople() {
		this.clock.set(java.time.LocalDate.of(2026, 3, 18), LocalTime.of(8, 0), ZoneOffset.UTC);
		this.team = newTeam();
		this.coachName = open(this.people.addCoach(this.team.id(), "Cay Coach"));
		this.stranger = this.people.addAthlete(newTeam().id(), NewAthlete.named("Ann Ashe"));
	}

	protected Team newTeam() {
		return this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", ZoneOffset.UTC);
	}

	protected String open(PersonId person) {
		String username = person + "@club.example";
		this.accounts.open(person, username, PASSWORD);
		return username;
	}

	protected Caller nobody() {
		return new Caller(this.port);
	}

	protected Caller signedIn(String username) {
		Caller caller = nobody();
		caller.signIn(username, PASSWORD);
		return caller;
	}

}
