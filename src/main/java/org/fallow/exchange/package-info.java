/**
 * The outside world: CSV files of mornings, and the demo squad.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform", "team", "account", "rules", "entry",
		"illness", "illness :: core", "training", "training :: core" })
package org.fallow.exchange;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
