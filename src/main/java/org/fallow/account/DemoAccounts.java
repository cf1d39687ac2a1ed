package org.fallow.account;

import java.util.List;

import org.fallow.team.Role;

/**
 * Accounts of invented people, listed on the sign-in page. A bean of this type exists in
 * the demo only.
 */
public interface DemoAccounts {

	/**
	 * The accounts.
	 * @return in the order to be listed
	 */
	List<DemoAccount> list();

	/**
	 * One of them.
	 *
	 * @param name the invented person
	 * @param username what to sign in with
	 * @param password in readable form, since there is nothing to protect
	 * @param role coach or athlete
	 */
	record DemoAccount(String name, String username, String password, Role role) {
	}

}
