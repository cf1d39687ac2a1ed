package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Series;
import org.fallow.baseline.SustainedRise;
import org.jspecify.annotations.Nullable;

/**
 * What a day's decision used of resting heart rate. Absent numbers are those the day did
 * not have: no reading, no baseline.
 *
 * @param series series in use
 * @param reading the day's usable reading, bpm
 * @param n eligible readings of the baseline
 * @param baseline median, bpm
 * @param spread spread, bpm
 * @param provisional whether the baseline rests on few readings
 * @param heldAsOf the day of which the baseline is, where it is held
 * @param dev deviation, bpm
 * @param tolerance T, bpm
 * @param low limit of low, bpm
 * @param high limit of high, bpm
 * @param flag the day's flag
 * @param raisedForAction whether it is raised for action
 * @param before the earlier deviations used, oldest first
 * @param slack k of the sustained rise, bpm
 * @param limit h of the sustained rise, bpm
 * @param riseBefore the sustained rise before the day
 * @param rise the sustained rise after it
 * @param last the latest morning before with a deviation; absent before the first
 * @param keptFlag flag kept because the reading was left out
 * @param keptRaised whether raised for action is kept
 * @param keptLow whether a second low morning is kept
 * @param keptFrom the day it is kept from
 * @param leftOut whether the reading has been left out for too long
 * @param lowAgain whether this is the second low morning
 * @param drift whether the baseline has drifted up slowly
 * @param working the working level in force; absent without one
 * @param own the held baseline's own median, bpm; absent where none is held
 */
public record RhrEvidence(@Nullable Series series, @Nullable Double reading, int n, @Nullable Double baseline,
		@Nullable Double spread, boolean provisional, @Nullable LocalDate heldAsOf, @Nullable Double dev,
		@Nullable Double tolerance, @Nullable Double low, @Nullable Double high, @Nullable RhrFlag flag,
		boolean raisedForAction, List<State.PastDeviation> before, @Nullable Double slack, @Nullable Double limit,
		SustainedRise riseBefore, SustainedRise rise, State.@Nullable Kept last, @Nullable RhrFlag keptFlag,
		boolean keptRaised, boolean keptLow, @Nullable LocalDate keptFrom, boolean leftOut, boolean lowAgain,
		boolean drift, @Nullable Working working, @Nullable Double own) {
}
