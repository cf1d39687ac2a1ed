package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;

/**
 * A resting heart rate measured again, as an athlete enters it.
 *
 * @param day the morning
 * @param kind what it was measured again for
 * @param method how it was taken
 * @param posture how the athlete was placed
 * @param rhrBpm resting heart rate, bpm
 */
public record NewMeasurement(LocalDate day, MeasuredAgain.Kind kind, Method method, Posture posture, double rhrBpm) {
}
