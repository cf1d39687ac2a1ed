package org.fallow.training;

import org.fallow.training.core.HeartRateCeiling;
import org.fallow.training.core.MaximumHeartRate;
import org.jspecify.annotations.Nullable;

/**
 * What an athlete's heart rate is measured by.
 *
 * @param maximum tested, or estimated from the age; absent for those under 18 without a
 * test
 * @param byEffortOnly whether a medicine is taken that lowers heart rate, so that no
 * ceiling in bpm holds
 */
public record Ceilings(@Nullable MaximumHeartRate maximum, boolean byEffortOnly) {

	/**
	 * A share of the maximum in bpm.
	 * @param share of HRmax; absent where as programmed
	 * @return the ceiling; absent where there is none to tell
	 */
	public @Nullable HeartRateCeiling of(@Nullable Double share) {
		return (share == null || this.maximum == null || this.byEffortOnly) ? null
				: HeartRateCeiling.ofMaximum(this.maximum, share);
	}

}
