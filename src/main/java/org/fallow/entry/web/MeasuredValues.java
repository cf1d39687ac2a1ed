package org.fallow.entry.web;

import java.util.List;

import org.fallow.entry.Method;
import org.fallow.entry.RrSeries;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * The two numbers of a morning. Where RR intervals are given both are worked out from
 * them; a number typed beside them has to be the same reading, to within 1.
 *
 * @param rhrBpm resting heart rate, bpm; absent when not measured
 * @param rmssdMs RMSSD, ms; absent when not measured
 */
record MeasuredValues(@Nullable Double rhrBpm, @Nullable Double rmssdMs) {

	private static final double SAME = 1.0;

	static MeasuredValues of(MorningForm form, @Nullable RrSeries series, List<Problem> problems) {
		Double rhr = counted(form, Typed.number(form.rhr(), "rhr", problems), problems);
		Double rmssd = Typed.number(form.rmssd(), "rmssd", problems);
		if (series == null) {
			return new MeasuredValues(rhr, rmssd);
		}
		RrSeries.Figures clean = series.clean();
		return new MeasuredValues(agreed(rhr, clean.heartRateBpm(), "rhr", problems),
				agreed(rmssd, clean.rmssdMs(), "rmssd", problems));
	}

	/**
	 * A pulse counted over 30 or 60 seconds, as the method says. A heart rate typed
	 * beside it has to be the same.
	 */
	private static @Nullable Double counted(MorningForm form, @Nullable Double rhr, List<Problem> problems) {
		String text = Typed.words(form.counted());
		if (text.isEmpty()) {
			return rhr;
		}
		double step = Typed.oneOf(Method.class, form.method()).map(Method::stepBpm).orElse(0.0);
		if (!text.matches("\\d{1,3}")) {
			problems.add(Problem.of("counted", "morning.counted.whole"));
			return rhr;
		}
		if (step == 0) {
			problems.add(Problem.of("method", "morning.counted.method"));
			return rhr;
		}
		double bpm = Integer.parseInt(text) * step;
		if (rhr != null && rhr != bpm) {
			problems.add(Problem.of("rhr", "morning.counted.differs", bpm));
		}
		return bpm;
	}

	private static @Nullable Double agreed(@Nullable Double typed, @Nullable Double computed, String field,
			List<Problem> problems) {
		if (computed == null) {
			return typed;
		}
		if (typed != null && Math.abs(typed - computed) > SAME) {
			problems.add(Problem.of(field, "morning.rr.differs", computed));
		}
		return computed;
	}

	boolean any() {
		return this.rhrBpm != null || this.rmssdMs != null;
	}

}
