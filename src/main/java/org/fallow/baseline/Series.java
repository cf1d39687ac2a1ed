package org.fallow.baseline;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;

/**
 * Which readings may be compared: same method, same posture, and the same state of
 * rate-lowering medicine. Sitting and lying differ by about 12 bpm (JSSM 2010;9:176,
 * table 1).
 *
 * @param method how the reading was taken
 * @param posture how the athlete was placed
 * @param medicine whether a rate-lowering medicine was on
 */
public record Series(Method method, Posture posture, boolean medicine) {
}
