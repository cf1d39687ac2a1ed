package org.fallow.account;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.SignedIn;
import org.fallow.team.Role;

import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.userdetails.UserDetails;
import org.jspecify.annotations.Nullable;

/**
 * Who is signed in: the principal that pages get by
 * {@code @AuthenticationPrincipal SignedInPerson}. It is kept in the session, so it holds
 * only what Java can serialize anywhere.
 */
public final class SignedInPerson implements SignedIn, UserDetails {

	private static final long serialVersionUID = 3L;

	/** What a person is here changes while signed in; it is asked each time. */
	private static final GrantedAuthority SIGNED_IN = new SimpleGrantedAuthority("ROLE_PERSON");

	private final UUID id;

	private final String name;

	/** A session of before this was kept has none. */
	private final @Nullable String linkBy;

	SignedInPerson(PersonId id, String name) {
		this(id, name, null);
	}

	SignedInPerson(PersonId id, String name, @Nullable String linkBy) {
		this.id = id.value();
		this.name = name;
		this.linkBy = linkBy;
	}

	@Override
	public Optional<String> linkBy() {
		return Optional.ofNullable(this.linkBy);
	}

	@Override
	public PersonId personId() {
		return new PersonId(this.id);
	}

	/**
	 * The person's name.
	 * @return as the coach wrote it
	 */
	public String name() {
		return this.name;
	}

	/**
	 * In which role the person acts on an athlete's data.
	 * @param athlete whose data
	 * @return ATHLETE for the person's own, else COACH
	 */
	public Role roleFor(PersonId athlete) {
		return athlete.value().equals(this.id) ? Role.ATHLETE : Role.COACH;
	}

	@Override
	public Collection<? extends GrantedAuthority> getAuthorities() {
		return List.of(SIGNED_IN);
	}

	/** Never known here: whoever judges a password reads its hash and forgets it. */
	@Override
	public @Nullable String getPassword() {
		return null;
	}

	/**
	 * What the framework calls this person, in the list of sessions for example.
	 * @return the person's id as text, nothing personal
	 */
	@Override
	public String getUsername() {
		return this.id.toString();
	}

	@Override
	public boolean equals(@Nullable Object other) {
		return other instanceof SignedInPerson person && person.id.equals(this.id);
	}

	@Override
	public int hashCode() {
		return this.id.hashCode();
	}

}
