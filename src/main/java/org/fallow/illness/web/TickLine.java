package org.fallow.illness.web;

import java.util.UUID;

import org.fallow.entry.Submission;
import org.fallow.illness.Ticked;
import org.jspecify.annotations.Nullable;

/**
 * A tick of today as the page shows it.
 *
 * @param ticked what was ticked
 * @param name key of its name
 * @param session key of the session; absent for the morning entry and a report
 * @param requestId the sending of a form that tells it to be a slip
 */
public record TickLine(Ticked ticked, String name, @Nullable String session, UUID requestId) {

	static TickLine of(Ticked ticked) {
		String session = (ticked.tick() == null) ? null : ticked.tick().session();
		String name = ((session == null) ? "symptom." : "after.") + ticked.code();
		return new TickLine(ticked, name, session, Submission.newRequestId());
	}

	/**
	 * Whether it may be told to be a slip.
	 * @return false for one that was, and where something speaks against it
	 */
	public boolean possible() {
		return !this.ticked.slip() && this.ticked.refusal() == null;
	}

}
