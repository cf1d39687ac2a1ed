package org.fallow.baseline;

import org.fallow.rules.RuleSet;

/**
 * Where the mean of the last mornings' ln RMSSD lies against the baseline.
 */
public enum HrvFlag {

	/** Below the mean by more than the rules' SDs. */
	SUPPRESSED,
	/** Not suppressed. */
	NORMAL;

	/**
	 * Whether a mean of the last mornings is suppressed.
	 * @param recent the mean, ln RMSSD
	 * @param mean baseline mean, ln RMSSD
	 * @param sd baseline SD, ln RMSSD
	 * @param rules how many SDs below the baseline
	 * @return true if it is below the limit
	 */
	public static boolean isSuppressed(double recent, double mean, double sd, RuleSet.Hrv rules) {
		return recent < mean - rules.suppressedSds() * sd;
	}

}
