package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.baseline.HrvBaseline;
import org.fallow.baseline.RhrBaseline;
import org.fallow.baseline.Series;
import org.jspecify.annotations.Nullable;

/**
 * Baselines computed once for an episode and held.
 *
 * @param asOf the day they are the baselines of: three days before the first onset
 * @param series the series in use when the episode opened; absent if there was none
 * @param rhr resting heart rate; absent if there were too few readings
 * @param hrvSeries series of the RMSSD in use when it opened; absent if there was none
 * @param hrv ln RMSSD; absent if there were too few readings
 * @param working a coach's working level in force; absent if there is none
 */
public record Held(LocalDate asOf, @Nullable Series series, @Nullable RhrBaseline rhr, @Nullable Series hrvSeries,
		@Nullable HrvBaseline hrv, @Nullable Working working) {

	/**
	 * What mornings are held against: the working level with the baseline's own spread
	 * and line, or the baseline.
	 * @return absent without a baseline
	 */
	@Nullable RhrBaseline level() {
		return (this.rhr == null || this.working == null) ? this.rhr
				: new RhrBaseline(this.rhr.n(), this.working.bpm(), this.rhr.spread(), this.rhr.line());
	}

	/**
	 * What one reading is held against: a reading as far above the own baseline as no
	 * working level may be is judged by the own baseline (the safer reading).
	 */
	@Nullable RhrBaseline levelFor(double reading, double mostDeviation) {
		return (this.rhr != null && reading - this.rhr.median() >= mostDeviation) ? this.rhr : level();
	}

	/** What was held on a day: a working level judges no morning before its first. */
	Held on(LocalDate day) {
		return (this.working != null && day.isBefore(this.working.since())) ? with(null) : this;
	}

	Held with(@Nullable Working level) {
		return new Held(this.asOf, this.series, this.rhr, this.hrvSeries, this.hrv, level);
	}

}
