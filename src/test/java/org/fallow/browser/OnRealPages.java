package org.fallow.browser;

import java.time.LocalTime;
import java.time.ZoneOffset;

import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.Athlete;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.MessageSource;
import org.springframework.context.annotation.Import;

/**
 * A coach and an athlete, Ann, of a team of their own. Ann has had 28 quiet mornings; it
 * is eight in the morning and she has not entered today's.
 */
@DatabaseTest(webEnvironment = WebEnvironment.RANDOM_PORT)
@Import({ SettableClock.class, Runners.class })
abstract class OnRealPages {

	@Autowired
	protected SettableClock clock;

	@Autowired
	protected Runners runners;

	@Autowired
	protected MessageSource messages;

	@LocalServerPort
	protected int port;

	protected Team team;

	protected String coachName;

	protected Athlete ann;

	protected String annName;

	@BeforeEach
	void makePeople() {
		this.clock.set(Runners.TODAY, LocalTime.of(8, 0), ZoneOffset.UTC);
		this.team = this.runners.team();
		this.coachName = this.runners.coach(this.team);
		this.ann = this.runners.athlete(this.team, "Ann Ashe", "Track");
		this.annName = this.runners.open(this.ann.id());
		this.runners.quietMonth(this.ann);
	}

	protected Visitor visitor(Browser browser) {
		return new Visitor(browser, this.port, this.messages);
	}

	protected Visitor signedIn(Browser browser, String username) {
		Visitor visitor = visitor(browser);
		visitor.signIn(username);
		return visitor;
	}

}
