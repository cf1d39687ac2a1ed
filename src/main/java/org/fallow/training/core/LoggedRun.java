package org.fallow.training.core;

import java.time.LocalDate;

import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;

/**
 * A run as it was logged.
 *
 * @param day civil day
 * @param minutes how long; absent when not stated
 * @param rpe session RPE, CR-10; absent when not stated
 * @param intensity the hardest of it; absent when not stated
 */
public record LoggedRun(LocalDate day, @Nullable Integer minutes, @Nullable Double rpe, @Nullable Intensity intensity) {
}
