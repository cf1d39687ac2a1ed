package org.fallow.account;

import java.util.List;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.security.web.webauthn.api.Bytes;
import org.springframework.security.web.webauthn.api.CredentialRecord;
import org.springframework.security.web.webauthn.api.ImmutableCredentialRecord;
import org.springframework.security.web.webauthn.management.JdbcUserCredentialRepository;
import org.springframework.security.web.webauthn.management.UserCredentialRepository;

/** The library's rows without what nothing reads. */
final class PasskeyRows implements UserCredentialRepository {

	private final UserCredentialRepository rows;

	PasskeyRows(JdbcOperations jdbc) {
		this.rows = new JdbcUserCredentialRepository(jdbc);
	}

	@Override
	public void save(CredentialRecord row) {
		this.rows.save(ImmutableCredentialRecord.fromCredentialRecord(row).attestationClientDataJSON(null).build());
	}

	@Override
	public @Nullable CredentialRecord findByCredentialId(Bytes credentialId) {
		return this.rows.findByCredentialId(credentialId);
	}

	@Override
	public List<CredentialRecord> findByUserId(Bytes userId) {
		return this.rows.findByUserId(userId);
	}

	@Override
	public void delete(Bytes credentialId) {
		this.rows.delete(credentialId);
	}

}
