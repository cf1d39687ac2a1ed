package org.fallow.team;

import java.util.List;
import java.util.UUID;

import jakarta.persistence.EntityManager;
import org.fallow.access.PersonId;

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

	private final EntityManager entities;

	AccountDetails(Accounts accounts, EntityManager entities) {
		this.accounts = accounts;
		this.entities = entities;
	}

	@Override
	@Transactional(readOnly = true)
	public SignedInPerson loadUserByUsername(String username) {
		Account account = this.accounts.find(username)
			.orElseThrow(() -> new UsernameNotFoundException("no such account"));
		Person person = this.entities.find(Person.class, account.personId());
		return new SignedInPerson(new PersonId(account.personId()), person.name(), account.username(),
				account.passwordHash(), roles(account.personId()));
	}

	private List<Role> roles(UUID person) {
		return this.entities
			.createQuery("select distinct m.key.role from Membership m where m.key.personId = :person", Role.class)
			.setParameter("person", person)
			.getResultList();
	}

}
