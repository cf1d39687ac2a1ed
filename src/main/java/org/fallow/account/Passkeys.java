package org.fallow.account;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.webauthn.api.AuthenticatorSelectionCriteria;
import org.springframework.security.web.webauthn.api.Bytes;
import org.springframework.security.web.webauthn.api.CredentialRecord;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialCreationOptions;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialRequestOptions;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialRpEntity;
import org.springframework.security.web.webauthn.api.ResidentKeyRequirement;
import org.springframework.security.web.webauthn.api.UserVerificationRequirement;
import org.springframework.security.web.webauthn.management.ImmutablePublicKeyCredentialCreationOptionsRequest;
import org.springframework.security.web.webauthn.management.ImmutablePublicKeyCredentialRequestOptionsRequest;
import org.springframework.security.web.webauthn.management.ImmutableRelyingPartyRegistrationRequest;
import org.springframework.security.web.webauthn.management.JdbcPublicKeyCredentialUserEntityRepository;
import org.springframework.security.web.webauthn.management.PublicKeyCredentialUserEntityRepository;
import org.springframework.security.web.webauthn.management.RelyingPartyAuthenticationRequest;
import org.springframework.security.web.webauthn.management.RelyingPartyPublicKey;
import org.springframework.security.web.webauthn.management.UserCredentialRepository;
import org.springframework.security.web.webauthn.management.Webauthn4JRelyingPartyOperations;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.interceptor.TransactionAspectSupport;

/**
 * Passkeys (WebAuthn): keys on people's own devices, which ask for a finger, a face or a
 * code. They are bound to the host of {@link PublicUrl}.
 */
@Component
public class Passkeys {

	/** Most characters of a passkey's label. */
	public static final int LONGEST_LABEL = 60;

	/** Most passkeys of one person. */
	public static final int MOST = 20;

	private static final Logger log = LoggerFactory.getLogger(Passkeys.class);

	private final PublicKeyCredentialUserEntityRepository owners;

	private final UserCredentialRepository keys;

	private final Webauthn4JRelyingPartyOperations ceremonies;

	private final AccountLinks ways;

	private final SignInWork work;

	Passkeys(JdbcOperations jdbc, PublicUrl address, AccountLinks ways, SignInWork work) {
		this.owners = new JdbcPublicKeyCredentialUserEntityRepository(jdbc);
		this.keys = new PasskeyRows(jdbc);
		this.ceremonies = new Webauthn4JRelyingPartyOperations(this.owners, this.keys,
				PublicKeyCredentialRpEntity.builder().id(address.host()).name("Fallow").build(),
				Set.of(address.origin()));
		this.ceremonies
			.setCustomizeRequestOptions((options) -> options.userVerification(UserVerificationRequirement.REQUIRED));
		this.ceremonies.setCustomizeCreationOptions(
				(options) -> options.authenticatorSelection(AuthenticatorSelectionCriteria.builder()
					.residentKey(ResidentKeyRequirement.REQUIRED)
					.userVerification(UserVerificationRequirement.REQUIRED)
					.build()));
		this.ways = ways;
		this.work = work;
	}

	/**
	 * The present person's passkeys.
	 * @param person the person
	 * @return the oldest first
	 */
	@Transactional(readOnly = true)
	public List<Passkey> of(PersonId person) {
		return rows(person).stream()
			.map((row) -> new Passkey(row.getCredentialId().toBase64UrlString(), row.getLabel(), row.getCreated(),
					row.getLastUsed()))
			.sorted(Comparator.comparing(Passkey::since))
			.toList();
	}

	private List<CredentialRecord> rows(PersonId person) {
		return Optional.ofNullable(this.owners.findByUsername(person.toString()))
			.map((owner) -> this.keys.findByUserId(owner.getId()))
			.orElse(List.of());
	}

	/**
	 * Removes a passkey of the present person; what the device keeps no longer opens
	 * anything.
	 * @param person the person
	 * @param id names the passkey
	 * @return false if the person has none of this id
	 */
	@Transactional
	public boolean remove(PersonId person, String id) {
		Optional<CredentialRecord> own = rows(person).stream()
			.filter((row) -> row.getCredentialId().toBase64UrlString().equals(id))
			.findFirst();
		own.ifPresent((row) -> this.keys.delete(row.getCredentialId()));
		return own.isPresent();
	}

	/**
	 * What the browser needs to make a passkey for the present person.
	 * @param present who is signed in
	 * @return options with a fresh challenge, which is to be kept until {@link #register}
	 */
	@Transactional
	public PublicKeyCredentialCreationOptions creation(Authentication present) {
		return this.ceremonies
			.createPublicKeyCredentialCreationOptions(new ImmutablePublicKeyCredentialCreationOptionsRequest(present));
	}

	/**
	 * Keeps the public half of a passkey the browser made for the present person.
	 * @param present who is signed in
	 * @param challenge that of the options it was made by, in Base64url
	 * @param made what the browser sent
	 * @return false if it does not answer the challenge, was kept before, or is one too
	 * many
	 */
	@Transactional
	public boolean register(Authentication present, String challenge, RelyingPartyPublicKey made) {
		try {
			PublicKeyCredentialCreationOptions options = answering(creation(present), Bytes.fromBase64(challenge));
			if (this.keys.findByUserId(options.getUser().getId()).size() >= MOST) {
				return false;
			}
			this.ceremonies.registerCredential(new ImmutableRelyingPartyRegistrationRequest(options, made));
			this.ways.changed(PersonId.parse(present.getName()), TraceSubject.PASSKEY);
			return true;
		}
		catch (RuntimeException ex) {
			log.debug("a passkey was refused", ex);
			TransactionAspectSupport.currentTransactionStatus().setRollbackOnly();
			return false;
		}
	}

	private static PublicKeyCredentialCreationOptions answering(PublicKeyCredentialCreationOptions fresh,
			Bytes challenge) {
		return PublicKeyCredentialCreationOptions.builder()
			.rp(fresh.getRp())
			.user(fresh.getUser())
			.challenge(challenge)
			.pubKeyCredParams(fresh.getPubKeyCredParams())
			.authenticatorSelection(fresh.getAuthenticatorSelection())
			.build();
	}

	/**
	 * What the browser needs to sign in with a passkey, whoever it is.
	 * @return options with a fresh challenge, to be kept until the signature comes
	 */
	public PublicKeyCredentialRequestOptions request() {
		return this.ceremonies
			.createCredentialRequestOptions(new ImmutablePublicKeyCredentialRequestOptionsRequest(null));
	}

	/**
	 * Whose passkey signed.
	 *
	 * @param person whose
	 * @param made when it was made
	 */
	record Owner(PersonId person, Instant made) {
	}

	/** Whose passkey signed; empty when none of ours did. */
	Optional<Owner> owner(RelyingPartyAuthenticationRequest signed) {
		try {
			return Optional.of(this.work.call(() -> {
				PersonId person = PersonId
					.parse(Objects.requireNonNull(this.ceremonies.authenticate(signed)).getName());
				CredentialRecord key = this.keys.findByCredentialId(signed.getPublicKey().getRawId());
				return new Owner(person, Objects.requireNonNull(key).getCreated());
			}));
		}
		catch (RuntimeException ex) {
			log.debug("a passkey's signature was refused", ex);
			return Optional.empty();
		}
	}

	/**
	 * A passkey as its owner sees it.
	 *
	 * @param id names it
	 * @param label what the owner calls it
	 * @param since when it was made
	 * @param used when it last signed somebody in; the same as {@code since} until then
	 */
	public record Passkey(String id, String label, Instant since, Instant used) {
	}

}
