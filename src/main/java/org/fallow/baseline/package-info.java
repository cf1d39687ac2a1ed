/**
 * Series, baselines, deviations and flags; pure, no store, no clock.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "rules", "entry" })
package org.fallow.baseline;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
