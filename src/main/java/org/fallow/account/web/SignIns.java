package org.fallow.account.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;

import org.fallow.access.PersonId;
import org.fallow.team.EntrySetAside;
import org.jspecify.annotations.Nullable;

import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionalEventListener;

/**
 * Where a person is signed in, and ending that. A session's id opens it, so pages name
 * sessions by a hash of it.
 */
@Component
class SignIns {

	private static final Device UNKNOWN = Device.of(null);

	private final FindByIndexNameSessionRepository<? extends Session> sessions;

	SignIns(FindByIndexNameSessionRepository<? extends Session> sessions) {
		this.sessions = sessions;
	}

	/** A person's sessions, the last used first; the one of this id is marked. */
	List<SignIn> of(PersonId person, @Nullable String present) {
		return this.sessions.findByPrincipalName(person.toString())
			.values()
			.stream()
			.map((session) -> describe(session, present))
			.sorted(Comparator.comparing(SignIn::used).reversed())
			.toList();
	}

	private static SignIn describe(Session session, @Nullable String present) {
		Instant since = Objects.requireNonNullElse(session.getAttribute(NoteDevice.SINCE), session.getCreationTime());
		Device device = Objects.requireNonNullElse(session.getAttribute(NoteDevice.DEVICE), UNKNOWN);
		return new SignIn(handle(session.getId()), since, session.getLastAccessedTime(), device,
				session.getId().equals(present));
	}

	/** Ends one of a person's sessions, if it is there. */
	void end(PersonId person, String handle) {
		ids(person).stream().filter((id) -> handle(id).equals(handle)).forEach(this.sessions::deleteById);
	}

	/** Ends all of a person's sessions except, where given, the one of this id. */
	void endAll(PersonId person, @Nullable String except) {
		ids(person).stream().filter((id) -> !id.equals(except)).forEach(this.sessions::deleteById);
	}

	/** Nobody stays signed in as an entry that was put aside; told once that is so. */
	@TransactionalEventListener
	void endAll(EntrySetAside event) {
		endAll(event.entry(), null);
	}

	private List<String> ids(PersonId person) {
		return List.copyOf(this.sessions.findByPrincipalName(person.toString()).keySet());
	}

	private static String handle(String id) {
		try {
			return HexFormat.of()
				.formatHex(MessageDigest.getInstance("SHA-256").digest(id.getBytes(StandardCharsets.UTF_8)));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("every Java has SHA-256", ex);
		}
	}

	/**
	 * A session as its person sees it.
	 *
	 * @param handle names it, opens nothing
	 * @param since when the person signed in
	 * @param used when a page was last asked for
	 * @param device what with
	 * @param present whether it is the one that asks
	 */
	public record SignIn(String handle, Instant since, Instant used, Device device, boolean present) {
	}

}
