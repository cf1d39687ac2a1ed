package org.fallow.entry;

import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.team.Role;

/**
 * Who sends a fact, and which sending it is.
 *
 * @param actor who did it: the athlete, or a coach for them
 * @param role in which role
 * @param source by which way
 * @param requestId the sending: a form carries one, so that the same form sent twice
 * stores once
 */
public record Submission(PersonId actor, Role role, Source source, UUID requestId) {

	/**
	 * Sent by a page.
	 * @param actor who did it
	 * @param role in which role
	 * @param requestId the id the form carried
	 * @return the submission
	 */
	public static Submission page(PersonId actor, Role role, UUID requestId) {
		return new Submission(actor, role, Source.PAGE, requestId);
	}

	/**
	 * Read from a file a coach sent. Importers that may read the same row again derive
	 * the id from the row's content.
	 * @param actor the coach
	 * @param requestId names the row
	 * @return the submission
	 */
	public static Submission imported(PersonId actor, UUID requestId) {
		return new Submission(actor, Role.COACH, Source.IMPORT, requestId);
	}

	/**
	 * An id for a form that is about to be shown.
	 * @return a new id
	 */
	public static UUID newRequestId() {
		return Ids.next();
	}

}
