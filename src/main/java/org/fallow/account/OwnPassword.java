package org.fallow.account;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.team.Squad;
import org.fallow.wording.Message;

import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;

/**
 * Setting one's own password: with the present one, or by a link.
 */
@Service
public class OwnPassword {

	private final Accounts accounts;

	private final Squad squad;

	private final PasswordEncoder encoder;

	private final PasswordLinks links;

	private final SignInDelay delay;

	private final AccountLinks ways;

	private final SignInWork work;

	OwnPassword(Accounts accounts, Squad squad, PasswordEncoder encoder, PasswordLinks links, SignInDelay delay,
			AccountLinks ways, SignInWork work) {
		this.accounts = accounts;
		this.squad = squad;
		this.encoder = encoder;
		this.links = links;
		this.delay = delay;
		this.ways = ways;
		this.work = work;
	}

	/**
	 * Replaces a person's password. The caller ends the person's other sessions.
	 * @param person whose
	 * @param present the password so far; guessing it is slowed down as at sign-in
	 * @param wanted the new one
	 * @return what is wrong; empty when it is done
	 */
	public Optional<Message> change(PersonId person, String present, String wanted) {
		Account account = this.accounts.find(person).orElseThrow();
		SignInDelay.Key name = SignInDelay.Key.name(account.username());
		Duration wait = this.delay.begin(name);
		if (!wait.isZero()) {
			return Optional.of(TooManyTries.message("password.present.wait", wait));
		}
		if (!PasswordRules.isShortEnough(present) || !this.encoder.matches(present, account.passwordHash())) {
			return Optional.of(Message.of("password.present.wrong"));
		}
		this.delay.succeeded(name);
		Optional<Message> problem = this.accounts.problem(account, wanted, name(person));
		if (problem.isEmpty()) {
			String hash = this.accounts.encoded(wanted);
			this.work.run(() -> {
				this.accounts.changePassword(person, hash);
				this.ways.changed(person, TraceSubject.PASSWORD);
			});
			this.ways.tellChanged(person);
		}
		return problem;
	}

	/**
	 * The sign-in name a link is for.
	 * @param link hash of the link's secret
	 * @return the name; empty when the link has expired, was used or replaced, or never
	 * was one
	 */
	public Optional<String> usernameOf(String link) {
		return this.work.call(() -> this.links.holder(link).flatMap(this.accounts::find).map(Account::username));
	}

	/**
	 * What is wrong with a password that somebody wants to set by a link.
	 * @param link hash of the link's secret
	 * @param wanted the new password
	 * @return the reason; empty when it will do, or when the link does not work
	 */
	public Optional<Message> problem(String link, String wanted) {
		return this.work.call(() -> this.links.holder(link))
			.flatMap((person) -> this.accounts.problem(this.accounts.find(person).orElseThrow(), wanted, name(person)));
	}

	/**
	 * Sets a password by a link and uses the link up. The caller ends all of the person's
	 * sessions.
	 * @param link hash of the link's secret
	 * @param wanted a password that {@link #problem} found nothing wrong with
	 * @return whose it was; empty when the link does not work, and nothing was changed
	 */
	public Optional<PersonId> reset(String link, String wanted) {
		String hash = this.accounts.encoded(wanted);
		Optional<PasswordLinks.Used> used = this.work.call(() -> {
			Optional<PasswordLinks.Used> found = this.links.use(link);
			found.ifPresent((one) -> set(one, hash));
			return found;
		});
		used.ifPresent((one) -> this.ways.tellUsed(one.person(), one.maker()));
		return used.map(PasswordLinks.Used::person);
	}

	private void set(PasswordLinks.Used used, String hash) {
		String maker = used.maker();
		if (maker == null) {
			this.accounts.changePassword(used.person(), hash);
		}
		else {
			this.accounts.changePassword(used.person(), hash, maker);
		}
		this.ways.used(used.person(), maker);
		this.delay.clear(SignInDelay.Key.name(this.accounts.find(used.person()).orElseThrow().username()));
	}

	private String name(PersonId person) {
		return Objects.requireNonNull(this.work.call(() -> this.squad.nameOf(person)).orElse(""));
	}

}
