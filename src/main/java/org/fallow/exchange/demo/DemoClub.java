package org.fallow.exchange.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.fallow.account.DemoAccounts;
import org.fallow.team.Role;

import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/**
 * The invented club's names and accounts. There is nothing to protect: all passwords are
 * the same and stand on the sign-in page.
 */
@Component
@Profile("demo")
class DemoClub implements DemoAccounts {

	static final String CLUB = "Tarnside Road Runners";

	static final String TEAM = "Road squad";

	static final String PASSWORD = "tarnside-demo";

	static final List<String> COACHES = List.of("Marisol Etxarte", "Hollis Arkenby");

	@Override
	public List<DemoAccount> list() {
		List<DemoAccount> accounts = new ArrayList<>();
		COACHES.forEach((name) -> accounts.add(account(name, Role.COACH)));
		DemoFiles.unmoved().people().forEach((person) -> accounts.add(account(person.name(), Role.ATHLETE)));
		return accounts;
	}

	private static DemoAccount account(String name, Role role) {
		return new DemoAccount(name, username(name), PASSWORD, role);
	}

	static String username(String name) {
		return name.split(" ")[0].toLowerCase(Locale.ROOT) + "@tarnside.example";
	}

}
