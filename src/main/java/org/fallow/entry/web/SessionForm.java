package org.fallow.entry.web;

import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.SessionLog;
import org.jspecify.annotations.Nullable;

/**
 * The session log as typed.
 *
 * @param key the session it corrects; empty for a new one
 * @param day the day
 * @param activity run or other
 * @param minutes duration
 * @param rpe session RPE, 0 to 10
 * @param intensity highest done
 * @param after what was noticed
 * @param note words
 * @param requestId this form's sending
 * @param redFlagConfirmed true once red flags were asked again
 */
public record SessionForm(@Nullable String key, @Nullable String day, @Nullable String activity,
		@Nullable String minutes, @Nullable String rpe, @Nullable String intensity, @Nullable List<String> after,
		@Nullable String note, @Nullable String requestId, @Nullable String redFlagConfirmed) {

	/** A stored session as it was typed, to be corrected. */
	static SessionForm of(SessionLog log, String newRequestId) {
		Double rpe = log.rpe();
		return new SessionForm(log.key(), log.day().toString(), log.activity().name(),
				(log.minutes() == null) ? null : log.minutes().toString(), (rpe == null) ? null : plain(rpe),
				(log.intensity() == null) ? null : log.intensity().name(),
				log.after().stream().map(AfterSession::name).toList(), log.note(), newRequestId, null);
	}

	private static String plain(double rpe) {
		return (rpe == Math.rint(rpe)) ? String.valueOf((long) rpe) : String.valueOf(rpe);
	}

	/** The same as a correction of a stored session, sent as a new one. */
	SessionForm correcting(String stored, String newRequestId) {
		return new SessionForm(stored, this.day, this.activity, this.minutes, this.rpe, this.intensity, this.after,
				this.note, newRequestId, this.redFlagConfirmed);
	}

	boolean isConfirmed() {
		return "true".equals(this.redFlagConfirmed);
	}

	List<String> codes() {
		return (this.after == null) ? List.of() : this.after;
	}

	List<AfterSession> noticed() {
		return codes().stream()
			.flatMap((code) -> Typed.oneOf(AfterSession.class, code).stream())
			.distinct()
			.sorted()
			.toList();
	}

	List<AfterSession> redFlags() {
		return noticed().stream().filter(AfterSession::isRedFlag).toList();
	}

}
