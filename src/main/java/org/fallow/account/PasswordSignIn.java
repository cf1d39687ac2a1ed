package org.fallow.account;

import java.time.Duration;
import java.util.Optional;

import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.authentication.WebAuthenticationDetails;

/**
 * Judges a sign-in name and a password. One hash is computed for every try that is looked
 * at, whether the account exists or not and however long the password is, so that the
 * time tells nothing.
 */
class PasswordSignIn implements AuthenticationProvider {

	private final Accounts accounts;

	private final AccountDetails details;

	private final SignInDelay delay;

	private final PasswordEncoder encoder;

	private final String nobodysHash;

	PasswordSignIn(Accounts accounts, AccountDetails details, SignInDelay delay, PasswordEncoder encoder) {
		this.accounts = accounts;
		this.details = details;
		this.delay = delay;
		this.encoder = encoder;
		this.nobodysHash = PasswordHashing.nobodysHash();
	}

	@Override
	public boolean supports(Class<?> authentication) {
		return UsernamePasswordAuthenticationToken.class.isAssignableFrom(authentication);
	}

	@Override
	public Authentication authenticate(Authentication tried) {
		String username = tried.getName();
		SignInDelay.Key name = SignInDelay.Key.name(SignInName.folded(username));
		SignInDelay.Key network = SignInDelay.Key.network(address(tried));
		Duration wait = this.delay.begin(name, network);
		if (!wait.isZero()) {
			throw new TooManyTries(wait);
		}
		Optional<Account> account = this.accounts.find(username);
		if (!matches(String.valueOf(tried.getCredentials()), account)) {
			throw new BadCredentialsException("name and password do not go together");
		}
		this.delay.succeeded(name, network);
		return signedIn(this.details.byPassword(account.orElseThrow()), tried);
	}

	private boolean matches(String password, Optional<Account> account) {
		boolean fits = PasswordRules.isShortEnough(password);
		boolean same = this.encoder.matches(fits ? password : "",
				account.map(Account::passwordHash).orElse(this.nobodysHash));
		return same && fits && account.isPresent();
	}

	private static String address(Authentication tried) {
		return (tried.getDetails() instanceof WebAuthenticationDetails web) ? web.getRemoteAddress() : "";
	}

	static Authentication signedIn(SignedInPerson person, Authentication tried) {
		UsernamePasswordAuthenticationToken proved = UsernamePasswordAuthenticationToken.authenticated(person, null,
				person.getAuthorities());
		proved.setDetails(tried.getDetails());
		return proved;
	}

}
