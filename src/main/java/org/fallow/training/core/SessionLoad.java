package org.fallow.training.core;

/**
 * What one session cost, as effort times time (session RPE: Foster 2001, JSCR 15:109).
 * Worked example: an effort of 5 for 60 minutes is a load of 300.
 *
 * @param rpe effort of the whole session, CR-10 scale, 0 to 10
 * @param minutes duration, 0 to 1440
 */
public record SessionLoad(double rpe, double minutes) {

	private static final double MOST_MINUTES = 1440;

	/**
	 * Checks the ranges.
	 * @throws IllegalArgumentException if effort or minutes are out of range
	 */
	public SessionLoad {
		if (!(rpe >= 0 && rpe <= 10)) {
			throw new IllegalArgumentException("session RPE out of range: " + rpe);
		}
		if (!(minutes >= 0 && minutes <= MOST_MINUTES)) {
			throw new IllegalArgumentException("minutes out of range: " + minutes);
		}
	}

	/**
	 * The load.
	 * @return effort times minutes
	 */
	public double load() {
		return this.rpe * this.minutes;
	}

}
