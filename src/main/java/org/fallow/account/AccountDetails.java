package org.fallow.account;

import org.fallow.access.PersonId;
import org.fallow.team.Squad;

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

	private final SignInWork work;

	AccountDetails(Accounts accounts, Squad squad, SignInWork work) {
		this.accounts = accounts;
		this.squad = squad;
		this.work = work;
	}

	@Override
	public SignedInPerson loadUserByUsername(String username) {
		return this.accounts.find(username)
			.map((account) -> person(new PersonId(account.personId())))
			.orElseThrow(() -> new UsernameNotFoundException("no such account"));
	}

	/** Somebody who has proved to be this person. */
	SignedInPerson person(PersonId id) {
		return new SignedInPerson(id, this.work.call(() -> this.squad.nameOf(id)).orElseThrow());
	}

}
