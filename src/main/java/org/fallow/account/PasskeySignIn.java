package org.fallow.account;

import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.webauthn.authentication.WebAuthnAuthenticationRequestToken;

/**
 * Judges a passkey's signature. Whom it belongs to becomes the same principal as by
 * password.
 */
class PasskeySignIn implements AuthenticationProvider {

	private final Passkeys passkeys;

	private final AccountDetails details;

	PasskeySignIn(Passkeys passkeys, AccountDetails details) {
		this.passkeys = passkeys;
		this.details = details;
	}

	@Override
	public boolean supports(Class<?> authentication) {
		return WebAuthnAuthenticationRequestToken.class.isAssignableFrom(authentication);
	}

	@Override
	public Authentication authenticate(Authentication tried) {
		WebAuthnAuthenticationRequestToken token = (WebAuthnAuthenticationRequestToken) tried;
		return this.passkeys.owner(token.getWebAuthnRequest())
			.map((owner) -> PasswordSignIn.signedIn(this.details.byPasskey(owner.person(), owner.made()), tried))
			.orElseThrow(() -> new BadCredentialsException("no passkey of anybody here"));
	}

}
