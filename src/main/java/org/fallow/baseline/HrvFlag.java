package org.fallow.baseline;

/**
 * Where the mean of the last mornings' ln RMSSD lies against the baseline.
 */
public enum HrvFlag {

	/** Below the mean by more than the rules' SDs. */
	SUPPRESSED,
	/** Not suppressed. */
	NORMAL

}
