package org.fallow.entry.web;

import java.util.List;
import java.util.Set;

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
 */
public record SessionForm(@Nullable String key, @Nullable String day, @Nullable String activity,
		@Nullable String minutes, @Nullable String rpe, @Nullable String intensity, @Nullable List<String> after,
		@Nullable String note, @Nullable String requestId) {

	/** A stored session as it was typed, to be corrected; without what was a slip. */
	static SessionForm of(SessionLog log, Set<String> slips, String newRequestId) {
		Double rpe = log.rpe();
		return new SessionForm(log.key(), log.day().toString(), log.activity().name(),
				(log.minutes() == null) ? null : log.minutes().toString(), (rpe == null) ? null : plain(rpe),
				(log.intensity() == null) ? null : log.intensity().name(),
				log.after().stream().map(AfterSession::name).filter((code) -> !slips.contains(code)).toList(),
				log.note(), newRequestId);
	}

	private static String plain(double rpe) {
		return (rpe == Math.rint(rpe)) ? String.valueOf((long) rpe) : String.valueOf(rpe);
	}

	/** The same as a correction of a stored session, sent as a new one. */
	SessionForm correcting(String stored, String newRequestId) {
		return new SessionForm(stored, this.day, this.activity, this.minutes, this.rpe, this.intensity, this.after,
				this.note, newRequestId);
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
