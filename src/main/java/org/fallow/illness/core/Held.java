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
 */
public record Held(LocalDate asOf, @Nullable Series series, @Nullable RhrBaseline rhr, @Nullable Series hrvSeries,
		@Nullable HrvBaseline hrv) {
}
