package org.fallow.account;

import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

import jakarta.persistence.EntityManager;
import org.fallow.access.PersonId;
import org.fallow.team.Club;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;

import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Who can sign in: e-mail addresses and hashed passwords.
 */
@Service
@Transactional
public class Accounts {

	/** Fewest characters of a chosen password. */
	public static final int SHORTEST_PASSWORD = 12;

	private final EntityManager entities;

	private final People people;

	private final PasswordEncoder encoder;

	private final SetUpCode setUpCode;

	private final Clock clock;

	Accounts(EntityManager entities, People people, PasswordEncoder encoder, SetUpCode setUpCode, Clock clock) {
		this.entities = entities;
		this.people = people;
		this.encoder = encoder;
		this.setUpCode = setUpCode;
		this.clock = clock;
	}

	/**
	 * Whether nobody can sign in yet, so that the set-up page is open.
	 * @return true until the first account exists
	 */
	@Transactional(readOnly = true)
	public boolean none() {
		return this.entities.createQuery("select count(a) from Account a", Long.class).getSingleResult() == 0;
	}

	/**
	 * Sets Fallow up: first club, team and coach. The code is used up.
	 * @param setUp what the page asked
	 * @return what is wrong, as field and message; empty when it is done
	 */
	public List<Problem> setUp(SetUp setUp) {
		List<Problem> problems = setUp.problems();
		if (!none()) {
			return List.of(Problem.of("code", "set-up.done"));
		}
		if (!this.setUpCode.matches(setUp.code())) {
			return List.of(Problem.of("code", "set-up.code.wrong"));
		}
		if (!problems.isEmpty()) {
			return problems;
		}
		Club club = this.people.foundClub(setUp.clubName());
		Team team = this.people.addTeam(club.id(), setUp.teamName(), ZoneId.of(setUp.zone().strip()));
		PersonId coach = this.people.addCoach(team.id(), setUp.name());
		this.people.owns(club.id(), coach);
		open(coach, setUp.username(), setUp.password());
		return List.of();
	}

	/**
	 * Opens an account with a chosen password.
	 * @param person whose
	 * @param username e-mail address or other sign-in name; upper and lower case are the
	 * same
	 * @param password at least {@value #SHORTEST_PASSWORD} characters
	 * @throws IllegalArgumentException if the address is taken; ask {@link #isTaken}
	 */
	public void open(PersonId person, String username, String password) {
		store(person, username, password, false);
	}

	/**
	 * Gives a person a one-time password, opening the account if there is none.
	 * @param person whose
	 * @param username e-mail address or other sign-in name; upper and lower case are the
	 * same
	 * @return the password, to be shown once; it cannot be read again
	 * @throws IllegalArgumentException if the address is somebody else's
	 */
	public String issuePassword(PersonId person, String username) {
		String password = SetUpCode.draw();
		store(person, username, password, true);
		return password;
	}

	/**
	 * Replaces a person's password by one they chose.
	 * @param person whose
	 * @param present the password so far
	 * @param wanted the new one
	 * @return what is wrong; empty when it is done
	 */
	public Optional<Message> changePassword(PersonId person, String present, String wanted) {
		Account account = this.entities.find(Account.class, person.value());
		if (account == null || !this.encoder.matches(present, account.passwordHash())) {
			return Optional.of(Message.of("password.present.wrong"));
		}
		if (wanted.length() < SHORTEST_PASSWORD) {
			return Optional.of(Message.of("password.short", SHORTEST_PASSWORD));
		}
		account.change(account.username(), encoded(wanted), false);
		return Optional.empty();
	}

	/**
	 * What speaks against a sign-in name and a password.
	 * @param username as typed
	 * @param password as typed
	 * @param name the person's, which no password shall be made of
	 * @return what is wrong, by field; empty if both will do
	 */
	@Transactional(readOnly = true)
	public List<Problem> check(String username, String password, String name) {
		List<Problem> problems = new java.util.ArrayList<>();
		if (!username.strip().matches("\\S{3,100}")) {
			problems.add(Problem.of("username", "account.username.form"));
		}
		else if (isTaken(username)) {
			problems.add(Problem.of("username", "account.username.taken"));
		}
		if (password.length() < SHORTEST_PASSWORD) {
			problems.add(Problem.of("password", "password.short", SHORTEST_PASSWORD));
		}
		return problems;
	}

	/**
	 * Whether an address is in use by somebody else.
	 * @param username e-mail address
	 * @param except the person who may have it
	 * @return true if it is
	 */
	@Transactional(readOnly = true)
	public boolean isTaken(String username, PersonId except) {
		return find(username).filter((account) -> !account.personId().equals(except.value())).isPresent();
	}

	/**
	 * Whether an address is in use by anybody.
	 * @param username e-mail address
	 * @return true if it is
	 */
	@Transactional(readOnly = true)
	public boolean isTaken(String username) {
		return find(username).isPresent();
	}

	/**
	 * Whether a person still signs in with a password that was issued to them.
	 * @param person whose account
	 * @return true until they chose one; false without an account
	 */
	@Transactional(readOnly = true)
	public boolean hasIssuedPassword(PersonId person) {
		Account account = this.entities.find(Account.class, person.value());
		return account != null && account.isOneTime();
	}

	Optional<Account> find(String username) {
		return this.entities.createQuery("select a from Account a where a.username = :username", Account.class)
			.setParameter("username", folded(username))
			.getResultStream()
			.findFirst();
	}

	private void store(PersonId person, String username, String password, boolean oneTime) {
		if (isTaken(username, person)) {
			throw new IllegalArgumentException("the address is somebody else's");
		}
		Account account = this.entities.find(Account.class, person.value());
		if (account == null) {
			this.entities.persist(
					new Account(person.value(), folded(username), encoded(password), oneTime, this.clock.instant()));
		}
		else {
			account.change(folded(username), encoded(password), oneTime);
		}
		this.entities.flush();
	}

	private String encoded(String password) {
		return java.util.Objects.requireNonNull(this.encoder.encode(password));
	}

	private static String folded(String username) {
		return username.strip().toLowerCase(Locale.ROOT);
	}

}
