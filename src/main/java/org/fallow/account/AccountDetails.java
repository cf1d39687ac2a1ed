package org.fallow.account;

import java.time.Instant;

import org.fallow.access.PersonId;
import org.fallow.team.Entries;
import org.fallow.team.Squad;

import org.springframework.security.authentication.DisabledException;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.stereotype.Component;

/**
 * Looks accounts up for Spring Security, by the sign-in name as typed.
 */
@Component
class AccountDetails implements UserDetailsService {

	private final Accounts accounts;

	private final Squad squad;

	private final Entries entries;

	private final SignInWork work;

	AccountDetails(Accounts accounts, Squad squad, Entries entries, SignInWork work) {
		this.accounts = accounts;
		this.squad = squad;
		this.entries = entries;
		this.work = work;
	}

	@Override
	public SignedInPerson loadUserByUsername(String username) {
		return this.accounts.find(username)
			.map((account) -> byPassword(account))
			.orElseThrow(() -> new UsernameNotFoundException("no such account"));
	}

	/**
	 * Somebody who knows the account's password, which somebody else may have set.
	 * @throws DisabledException if this entry of a person was put aside for another
	 */
	SignedInPerson byPassword(Account account) {
		PersonId id = new PersonId(account.personId());
		return new SignedInPerson(id, name(id), account.linkBy());
	}

	/**
	 * Somebody who has a passkey of this person: the person, if it was made before a link
	 * of somebody else was used, or while no such password stands.
	 * @throws DisabledException if this entry of a person was put aside for another
	 */
	SignedInPerson byPasskey(PersonId id, Instant made) {
		Account account = this.accounts.find(id).orElseThrow();
		Instant used = account.linkUsedAt();
		return new SignedInPerson(id, name(id), (used != null && !made.isBefore(used)) ? account.linkBy() : null);
	}

	private String name(PersonId id) {
		if (this.work.call(() -> this.entries.isSetAside(id))) {
			throw new DisabledException("this entry of the person was put aside");
		}
		return this.work.call(() -> this.squad.nameOf(id)).orElseThrow();
	}

}
