package org.fallow.baseline;

import java.time.LocalDate;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.jspecify.annotations.Nullable;

/**
 * Which readings may be compared: same method, same posture, the same state of
 * rate-lowering medicine, and no change of the device, its software or place between.
 * Sitting and lying differ by about 12 bpm (JSSM 2010;9:176, table 1).
 *
 * @param method how the reading was taken
 * @param posture how the athlete was placed
 * @param medicine whether a rate-lowering medicine was on
 * @param since first morning after the latest change of the device, its software or its
 * place; absent before the first
 */
public record Series(Method method, Posture posture, boolean medicine, @Nullable LocalDate since) {

	/**
	 * A series of a device that never changed.
	 * @param method how the reading was taken
	 * @param posture how the athlete was placed
	 * @param medicine whether a rate-lowering medicine was on
	 */
	public Series(Method method, Posture posture, boolean medicine) {
		this(method, posture, medicine, null);
	}

}
