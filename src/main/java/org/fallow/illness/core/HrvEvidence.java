package org.fallow.illness.core;

import java.util.List;

import org.fallow.baseline.HrvFlag;
import org.jspecify.annotations.Nullable;

/**
 * What a day's decision used of heart-rate variability.
 *
 * @param n eligible readings of the baseline
 * @param mean baseline mean of ln RMSSD; absent without a baseline
 * @param sd baseline SD of ln RMSSD; absent without a baseline
 * @param values ln RMSSD of the last mornings, oldest first
 * @param recent their mean; absent if there are too few
 * @param flag suppressed or not; absent if it cannot be told
 */
public record HrvEvidence(int n, @Nullable Double mean, @Nullable Double sd, List<Double> values,
		@Nullable Double recent, @Nullable HrvFlag flag) {
}
