package org.fallow.exchange.web;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.jspecify.annotations.Nullable;

/**
 * What holds where a file does not say, as the page sends it; the columns are read apart.
 *
 * @param method how the heart rate was taken
 * @param posture posture
 */
record MappingForm(@Nullable Method method, @Nullable Posture posture) {
}
