package org.fallow.account;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

import jakarta.persistence.EntityManager;
import org.fallow.access.PersonId;
import org.fallow.platform.Language;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;

/**
 * The accounts: who signs in by which name and password. Names that differ in case, or in
 * full-width and plain letters, are one name. Nothing here asks whether somebody may do
 * what is asked for: the callers do.
 */
@Service
public class Accounts {

	/** Fewest characters of a chosen password. */
	public static final int SHORTEST_PASSWORD = 12;

	/** Most characters of a chosen password. */
	public static final int LONGEST_PASSWORD = 200;

	/** How long a link works that is handed over. */
	public static final Duration LINK_BY_HAND = Duration.ofHours(24);

	private static final int UNGUESSABLE_BYTES = 32;

	private final EntityManager entities;

	private final PasswordEncoder encoder;

	private final PasswordRules rules;

	private final PasswordLinks links;

	private final SignInWork work;

	private final Clock clock;

	Accounts(EntityManager entities, PasswordEncoder encoder, PasswordRules rules, PasswordLinks links, SignInWork work,
			Clock clock) {
		this.entities = entities;
		this.encoder = encoder;
		this.rules = rules;
		this.links = links;
		this.work = work;
		this.clock = clock;
	}

	/**
	 * Whether nobody can sign in yet, so that the set-up page is open.
	 * @return true until the first account exists
	 */
	public boolean none() {
		return this.work
			.call(() -> this.entities.createQuery("select count(a) from Account a", Long.class).getSingleResult() == 0);
	}

	/**
	 * What is wrong with a sign-in name and a password that somebody wants.
	 * @param username as typed
	 * @param password as typed
	 * @param name the person's name, which a password must not be made of
	 * @return problems of the fields {@code username} and {@code password}; empty when
	 * both will do
	 */
	public List<Problem> check(String username, String password, String name) {
		List<Problem> problems = new ArrayList<>();
		if (!SignInName.isOne(username)) {
			problems.add(Problem.of("username", "account.username.form"));
		}
		else if (isTaken(username)) {
			problems.add(Problem.of("username", "account.username.taken"));
		}
		this.rules.problem(password, SignInName.folded(username), name)
			.ifPresent((problem) -> problems.add(new Problem("password", problem)));
		return problems;
	}

	/**
	 * Opens an account with a chosen password, or replaces name and password of one.
	 * @param person whose
	 * @param username e-mail address or other sign-in name
	 * @param password one that {@link #check} found nothing wrong with
	 * @throws IllegalArgumentException if the name is somebody else's; ask
	 * {@link #isTaken}
	 */
	public void open(PersonId person, String username, String password) {
		String hash = encoded(password);
		this.work.run(() -> store(person, username, hash));
	}

	/**
	 * Opens an account that nobody can sign in to before {@link #resetLink} has been
	 * used.
	 * @param person whose
	 * @param username e-mail address or other sign-in name
	 * @throws IllegalArgumentException if the name is somebody else's
	 */
	public void open(PersonId person, String username) {
		byte[] random = new byte[UNGUESSABLE_BYTES];
		new SecureRandom().nextBytes(random);
		open(person, username, HexFormat.of().formatHex(random));
	}

	/**
	 * Draws a link by which a person sets a new password, once and within
	 * {@link #LINK_BY_HAND}. Earlier links of the person no longer work. Whoever makes it
	 * for somebody else uses {@link AccountLinks}, which leaves a trace.
	 * @param person whose, with an account
	 * @return the token that ends the link's path; it cannot be read again
	 * @throws IllegalArgumentException if the person has no account
	 */
	public String resetLink(PersonId person) {
		return resetLink(person, null);
	}

	/** The same, made by somebody else of this name. */
	String resetLink(PersonId person, @Nullable String maker) {
		return this.work.call(() -> {
			if (this.entities.find(Account.class, person.value()) == null) {
				throw new IllegalArgumentException("a link for somebody without an account");
			}
			return this.links.issue(person, LINK_BY_HAND, maker);
		});
	}

	/**
	 * Whether a person can sign in here at all.
	 * @param person who
	 * @return true with an account
	 */
	public boolean hasAccount(PersonId person) {
		return find(person).isPresent();
	}

	/**
	 * Whether a sign-in name is in use by somebody else.
	 * @param username as typed
	 * @param except the person who may have it
	 * @return true if it is
	 */
	public boolean isTaken(String username, PersonId except) {
		return find(username).filter((account) -> !account.personId().equals(except.value())).isPresent();
	}

	/**
	 * Whether a sign-in name is in use by anybody.
	 * @param username as typed
	 * @return true if it is
	 */
	public boolean isTaken(String username) {
		return find(username).isPresent();
	}

	/**
	 * The language a person has chosen.
	 * @param person whose
	 * @return the language; empty for what the browser wishes, and without an account
	 */
	public Optional<Language> language(PersonId person) {
		return find(person).flatMap((account) -> Language.tagged(account.language()));
	}

	/**
	 * Keeps a person's choice of language.
	 * @param person whose, with an account
	 * @param language the language; null for what the browser wishes
	 */
	public void speak(PersonId person, @Nullable Language language) {
		this.work.run(() -> this.entities.find(Account.class, person.value())
			.speak((language == null) ? null : language.tag()));
	}

	/** What is wrong with a new password of this account. */
	Optional<Message> problem(Account account, String password, String name) {
		return this.rules.problem(password, account.username(), name);
	}

	Optional<Account> find(PersonId person) {
		return this.work.call(() -> Optional.ofNullable(this.entities.find(Account.class, person.value())));
	}

	Optional<Account> find(String username) {
		return this.work
			.call(() -> this.entities.createQuery("select a from Account a where a.username = :username", Account.class)
				.setParameter("username", SignInName.folded(username))
				.getResultStream()
				.findFirst());
	}

	/** Replaces the password; within a transaction it becomes true with it. */
	void changePassword(PersonId person, String hash) {
		this.work.run(() -> this.entities.find(Account.class, person.value()).changePassword(hash));
	}

	/** Replaces the password by a link that somebody else had made. */
	void changePassword(PersonId person, String hash, String maker) {
		this.work.run(() -> this.entities.find(Account.class, person.value())
			.changePassword(hash, maker, this.clock.instant()));
	}

	/** Notes a sign-in of now; when the one before was, empty for the first. */
	Optional<Instant> signedIn(PersonId person) {
		return this.work.call(() -> Optional
			.ofNullable(this.entities.find(Account.class, person.value()).signIn(this.clock.instant())));
	}

	private void store(PersonId person, String username, String hash) {
		if (isTaken(username, person)) {
			throw new IllegalArgumentException("the sign-in name is somebody else's");
		}
		String folded = SignInName.folded(username);
		Account account = this.entities.find(Account.class, person.value());
		if (account == null) {
			this.entities.persist(new Account(person.value(), folded, hash, this.clock.instant()));
		}
		else {
			account.rename(folded);
			account.changePassword(hash);
		}
		this.entities.flush();
	}

	String encoded(String password) {
		return Objects.requireNonNull(this.encoder.encode(password));
	}

}
