/**
 * Series, baselines, deviations and flags; pure, no store, no clock.
 */
@NullMarked
package org.fallow.baseline;

import org.jspecify.annotations.NullMarked;
