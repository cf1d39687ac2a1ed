/**
 * The group's programme, what each athlete does of it, and the runs logged against it.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform", "team", "rules", "entry", "baseline",
		"illness", "illness :: core" })
package org.fallow.training;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
