package org.fallow.illness.core;

import java.time.LocalDate;

/**
 * A coach's working level: the resting heart rate that mornings are held against instead
 * of a baseline that does not come back. It ends with a hold, a fever or a relapse.
 *
 * @param since first morning held against it
 * @param bpm median of the symptom-free mornings before
 */
public record Working(LocalDate since, double bpm) {
}
