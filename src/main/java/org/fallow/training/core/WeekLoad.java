package org.fallow.training.core;

import java.util.List;

import org.fallow.baseline.Statistics;
import org.jspecify.annotations.Nullable;

/**
 * The loads of the seven days of a week, days without a session as 0.
 *
 * @param days one load for each day, in order
 */
public record WeekLoad(List<Double> days) {

	private static final int DAYS = 7;

	/**
	 * Copies the loads and checks them.
	 * @throws IllegalArgumentException if there are not seven, or one is negative or no
	 * finite number
	 */
	public WeekLoad {
		days = List.copyOf(days);
		if (days.size() != DAYS) {
			throw new IllegalArgumentException("a week has 7 days, not " + days.size());
		}
		if (!days.stream().allMatch((load) -> load >= 0 && Double.isFinite(load))) {
			throw new IllegalArgumentException("a load is never negative: " + days);
		}
	}

	/**
	 * The load of the whole week.
	 * @return the sum
	 */
	public double total() {
		return this.days.stream().mapToDouble(Double::doubleValue).sum();
	}

	/**
	 * How much one day is like the other: mean over standard deviation (n - 1), after
	 * Foster. Worked example: 300, 0, 450, 200, 0, 600, 150 give 1.082232.
	 * @return the monotony; absent where all days are alike, for it would be without
	 * bound
	 */
	public @Nullable Double monotony() {
		double[] loads = this.days.stream().mapToDouble(Double::doubleValue).toArray();
		double sd = Statistics.sd(loads);
		return (sd == 0) ? null : Double.valueOf(Statistics.mean(loads) / sd);
	}

}
