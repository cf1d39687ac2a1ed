package org.fallow.entry;

import java.time.LocalDate;
import java.util.List;

import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;

/**
 * A training session as somebody logs it; {@link Sessions#save} checks it.
 *
 * @param key the session it corrects; absent for a new one
 * @param day civil day of the session
 * @param activity run or other
 * @param minutes duration; absent when not stated
 * @param rpe session RPE, CR-10; absent when not stated
 * @param intensity highest intensity done; absent when not stated
 * @param after what was noticed, empty when nothing
 * @param removed true if the log was a mistake
 * @param note the athlete's words
 * @param recordedOn for an import of history only, as with {@link NewMorning}
 */
public record NewSession(@Nullable String key, LocalDate day, Activity activity, @Nullable Integer minutes,
		@Nullable Double rpe, @Nullable Intensity intensity, List<AfterSession> after, boolean removed,
		@Nullable String note, @Nullable LocalDate recordedOn) {

	/** Copies the list. */
	public NewSession {
		after = List.copyOf(after);
	}

	/**
	 * A new run.
	 * @param day civil day of the run
	 * @param minutes duration; absent when not stated
	 * @param rpe session RPE, CR-10; absent when not stated
	 * @param intensity highest intensity done; absent when not stated
	 * @return the log, with nothing noticed after
	 */
	public static NewSession run(LocalDate day, @Nullable Integer minutes, @Nullable Double rpe,
			@Nullable Intensity intensity) {
		return new NewSession(null, day, Activity.RUN, minutes, rpe, intensity, List.of(), false, null, null);
	}

}
