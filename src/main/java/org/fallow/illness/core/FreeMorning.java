package org.fallow.illness.core;

import java.time.LocalDate;

/**
 * A symptom-free morning of an episode, as it was when it was decided.
 *
 * @param day the morning
 * @param shut whether resting heart rate, and nothing but numbers, kept the gate shut
 */
public record FreeMorning(LocalDate day, boolean shut) {
}
