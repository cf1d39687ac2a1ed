package org.fallow.browser;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.Saved;
import org.fallow.account.Accounts;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;

import org.springframework.boot.test.context.TestComponent;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Makes people with sign-ins, and their quiet mornings.
 */
@TestComponent
class Runners {

	static final String PASSWORD = "a long enough sentence";

	/** Today in every browser test: a Wednesday. */
	static final LocalDate TODAY = LocalDate.of(2026, 3, 18);

	/** Resting heart rates of quiet mornings; their middle is 50. */
	private static final double[] QUIET_RHR = { 50, 51, 49, 50, 52, 48, 50 };

	private static final double[] QUIET_RMSSD = { 70, 74, 66, 71, 77, 64, 69 };

	private final People people;

	private final Accounts accounts;

	private final Mornings mornings;

	Runners(People people, Accounts accounts, Mornings mornings) {
		this.people = people;
		this.accounts = accounts;
		this.mornings = mornings;
	}

	/** A team of its own club, so that no other test's people are seen. */
	Team team() {
		return this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", ZoneOffset.UTC);
	}

	/** A coach who can sign in; returns the sign-in name. */
	String coach(Team team) {
		return open(this.people.addCoach(team.id(), "Cay Coach"));
	}

	/** An adult athlete. */
	Athlete athlete(Team team, String name, String group) {
		return this.people.addAthlete(team.id(), new NewAthlete(name, null, null, LocalDate.of(1990, 5, 1), group));
	}

	/** Opens an account; returns the sign-in name. */
	String open(PersonId person) {
		String username = person + "@club.example";
		this.accounts.open(person, username, PASSWORD);
		return username;
	}

	/** Takes in 28 quiet mornings up to the day before today. */
	void quietMonth(Athlete athlete) {
		List<NewMorning> quiet = new ArrayList<>();
		for (int ago = 28; ago > 0; ago--) {
			quiet.add(NewMorning.measured(TODAY.minusDays(ago), Method.STRAP, Posture.LYING,
					QUIET_RHR[ago % QUIET_RHR.length], QUIET_RMSSD[ago % QUIET_RMSSD.length]));
		}
		assertThat(this.mornings.takeIn(athlete.id(), quiet, athlete.id())).hasSize(28)
			.allMatch((saved) -> saved instanceof Saved.Stored);
	}

}
