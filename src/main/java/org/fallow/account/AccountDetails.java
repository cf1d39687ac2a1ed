package org.fallow.account;

import org.fallow.access.PersonId;
import org.fallow.team.Squad;

import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Finds who wants to sign in.
 */
@Component
class AccountDetails implements UserDetailsService {

	private final Accounts accounts;

	private final Squad squad;

	AccountDetails(Accounts accounts, Squad squad) {
		this.accounts = accounts;
		this.squad = squad;
	}

	@Override
	@Transactional(readOnly = true)
	public SignedInPerson loadUserByUsername(String username) {
		Account account = this.accounts.find(username)
			.orElseThrow(() -> new UsernameNotFoundException("no such account"));
		PersonId person = new PersonId(account.personId());
		return new SignedInPerson(person, this.squad.nameOf(person).orElseThrow(), account.username(),
				account.passwordHash());
	}

}
