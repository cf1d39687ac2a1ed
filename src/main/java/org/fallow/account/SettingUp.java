package org.fallow.account;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.team.Club;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.fallow.wording.Problem;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;

/**
 * Sets Fallow up, once: first club, team and coach. Those who send the form at the same
 * time wait for each other, on all nodes, so that one club comes of it.
 */
@Service
public class SettingUp {

	/** Stands for this work among the database's advisory locks, and for nothing else. */
	private static final long LOCK = 16_011;

	private final Accounts accounts;

	private final People people;

	private final SetUpCode code;

	private final PasswordEncoder encoder;

	private final SignInWork work;

	private final JdbcClient jdbc;

	SettingUp(Accounts accounts, People people, SetUpCode code, PasswordEncoder encoder, SignInWork work,
			JdbcClient jdbc) {
		this.accounts = accounts;
		this.people = people;
		this.code = code;
		this.encoder = encoder;
		this.work = work;
		this.jdbc = jdbc;
	}

	/**
	 * Makes the first club, team and coach. The same form sent again, as a double click
	 * does, is answered as it was the first time, and nothing more is made.
	 * @param setUp what the page asked
	 * @return what is wrong, as field and message; empty when it is done
	 */
	public List<Problem> setUp(SetUp setUp) {
		List<Problem> problems = new ArrayList<>();
		if (!this.code.matches(setUp.code())) {
			problems.add(Problem.of("code", this.accounts.none() ? "set-up.code.wrong" : "set-up.done"));
			return problems;
		}
		Purpose.OPERATION.run(() -> this.work.together(() -> problems.addAll(settled(setUp))));
		return problems;
	}

	private List<Problem> settled(SetUp setUp) {
		this.jdbc.sql("select pg_advisory_xact_lock(?)").param(LOCK).query((row) -> {
			// nothing comes back: who holds the lock goes on
		});
		if (!this.accounts.none()) {
			return isThisOne(setUp) ? List.of() : List.of(Problem.of("code", "set-up.done"));
		}
		List<Problem> problems = new ArrayList<>(setUp.problems());
		problems.addAll(this.accounts.check(setUp.username(), setUp.password(), setUp.name()));
		if (problems.isEmpty()) {
			found(setUp);
		}
		return problems;
	}

	private boolean isThisOne(SetUp setUp) {
		return PasswordRules.isShortEnough(setUp.password()) && this.accounts.find(setUp.username())
			.filter((account) -> this.encoder.matches(setUp.password(), account.passwordHash()))
			.isPresent();
	}

	private void found(SetUp setUp) {
		Club club = this.people.foundClub(setUp.clubName());
		Team team = this.people.addTeam(club.id(), setUp.teamName(), ZoneId.of(setUp.zone().strip()));
		PersonId coach = this.people.addCoach(team.id(), setUp.name());
		this.people.owns(club.id(), coach);
		this.accounts.open(coach, setUp.username(), setUp.password());
	}

}
