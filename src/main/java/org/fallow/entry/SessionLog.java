package org.fallow.entry;

import java.time.LocalDate;
import java.util.List;

import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;

/**
 * One training session as done. A later log with the same key corrects it.
 *
 * @param key names the session among the athlete's; stable over corrections
 * @param day civil day of the session
 * @param recorded when it became known
 * @param activity run or other
 * @param minutes duration, 0 to 1440; absent when not stated
 * @param rpe session RPE, CR-10 scale, 0 to 10; absent when not stated
 * @param intensity highest intensity done; absent when not stated
 * @param after what was noticed in or after the session, empty when nothing
 * @param removed true if the log was entered by mistake and no longer counts
 * @param note the athlete's words
 */
public record SessionLog(String key, LocalDate day, Recorded recorded, Activity activity, @Nullable Integer minutes,
		@Nullable Double rpe, @Nullable Intensity intensity, List<AfterSession> after, boolean removed,
		@Nullable String note) implements Fact {

	/**
	 * Checks the ranges.
	 * @throws IllegalArgumentException if minutes or effort are out of range
	 */
	public SessionLog {
		after = List.copyOf(after);
		if (minutes != null && (minutes < 0 || minutes > 1440)) {
			throw new IllegalArgumentException("minutes out of range: " + minutes);
		}
		if (rpe != null && !(rpe >= 0 && rpe <= 10)) {
			throw new IllegalArgumentException("session RPE out of range: " + rpe);
		}
	}

	/**
	 * Whether any red flag was noticed.
	 * @return true if a clinician must see the athlete first
	 */
	public boolean hasRedFlag() {
		for (AfterSession noticed : this.after) {
			if (noticed.isRedFlag()) {
				return true;
			}
		}
		return false;
	}

	/**
	 * The same session with another after-session list.
	 * @param noticed what was noticed
	 * @return a copy
	 */
	public SessionLog noticing(List<AfterSession> noticed) {
		return new SessionLog(this.key, this.day, this.recorded, this.activity, this.minutes, this.rpe, this.intensity,
				noticed, this.removed, this.note);
	}

}
