/**
 * What a session asks of an athlete: heart-rate ceilings, loads, endurance minutes; pure,
 * no store, no clock.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "rules", "entry", "baseline" })
package org.fallow.training;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
