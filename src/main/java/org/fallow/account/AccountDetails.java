package org.fallow.account;

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
			.map((account) -> person(new PersonId(account.personId())))
			.orElseThrow(() -> new UsernameNotFoundException("no such account"));
	}

	/**
	 * Somebody who has proved to be this person.
	 * @throws DisabledException if this entry of a person was put aside for another
	 */
	SignedInPerson person(PersonId id) {
		if (this.work.call(() -> this.entries.isSetAside(id))) {
			throw new DisabledException("this entry of the person was put aside");
		}
		return new SignedInPerson(id, this.work.call(() -> this.squad.nameOf(id)).orElseThrow());
	}

}
