package org.fallow.entry.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.NewSession;
import org.fallow.rules.Intensity;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Reads a typed session: either a session to save, or what is wrong with it.
 */
final class SessionReader {

	private static final String UNKNOWN = "entry.code.unknown";

	private final SessionForm form;

	private final List<Problem> problems = new ArrayList<>();

	private @Nullable NewSession session;

	SessionReader(SessionForm form) {
		this.form = form;
		read();
	}

	List<Problem> problems() {
		return this.problems;
	}

	/** The session; only without problems. */
	NewSession session() {
		NewSession read = this.session;
		if (read == null) {
			throw new IllegalStateException("the form has problems");
		}
		return read;
	}

	private void read() {
		Optional<LocalDate> day = Typed.day(this.form.day(), "day", this.problems);
		Integer minutes = minutes();
		Double rpe = Typed.number(this.form.rpe(), "rpe", this.problems);
		Optional<Activity> activity = Typed.oneOf(Activity.class, this.form.activity());
		if (activity.isEmpty()) {
			this.problems.add(Problem.of("activity", "session.activity.missing"));
		}
		Optional<Intensity> intensity = Typed.oneOf(Intensity.class, this.form.intensity());
		if (intensity.isEmpty() && !Typed.words(this.form.intensity()).isEmpty()) {
			this.problems.add(Problem.of("intensity", UNKNOWN));
		}
		List<AfterSession> after = this.form.noticed();
		if (this.form.codes().stream().anyMatch((code) -> Typed.oneOf(AfterSession.class, code).isEmpty())) {
			this.problems.add(Problem.of("after", UNKNOWN));
		}
		if (this.problems.isEmpty()) {
			this.session = new NewSession(Typed.wordsOrNull(this.form.key()), day.orElseThrow(), activity.orElseThrow(),
					minutes, rpe, intensity.orElse(null), after, false, Typed.wordsOrNull(this.form.note()), null);
		}
	}

	private @Nullable Integer minutes() {
		if (Typed.words(this.form.minutes()).isEmpty()) {
			this.problems.add(Problem.of("minutes", "session.minutes.missing"));
			return null;
		}
		Double minutes = Typed.number(this.form.minutes(), "minutes", this.problems);
		if (minutes != null && minutes != Math.rint(minutes)) {
			this.problems.add(Problem.of("minutes", "session.minutes.whole"));
		}
		return (minutes == null) ? null : minutes.intValue();
	}

}
