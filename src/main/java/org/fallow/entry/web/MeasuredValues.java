package org.fallow.entry.web;

import java.util.List;

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
		Double rhr = Typed.number(form.rhr(), "rhr", problems);
		Double rmssd = Typed.number(form.rmssd(), "rmssd", problems);
		if (series == null) {
			return new MeasuredValues(rhr, rmssd);
		}
		RrSeries.Figures clean = series.clean();
		return new MeasuredValues(agreed(rhr, clean.heartRateBpm(), "rhr", problems),
				agreed(rmssd, clean.rmssdMs(), "rmssd", problems));
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
