package org.fallow.account;

import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/**
 * The ways to prove who one is. Each yields an authentication whose principal is a
 * {@link SignedInPerson}.
 */
@Component
public class SignInWays {

	private final ProviderManager password;

	private final ProviderManager passkey;

	SignInWays(Accounts accounts, AccountDetails details, SignInDelay delay, PasswordEncoder encoder,
			Passkeys passkeys) {
		this.password = new ProviderManager(new PasswordSignIn(accounts, details, delay, encoder));
		this.passkey = new ProviderManager(new PasskeySignIn(passkeys, details));
	}

	/**
	 * By sign-in name and password.
	 * @return what judges them; a {@link TooManyTries} says that it did not
	 */
	public AuthenticationManager byPassword() {
		return this.password;
	}

	/**
	 * By a passkey's signature.
	 * @return what judges it
	 */
	public AuthenticationManager byPasskey() {
		return this.passkey;
	}

}
