/**
 * The command without server or database: mornings and events from files through the pure
 * fold, one assessment a day into a file.
 */
@NullMarked
@ApplicationModule(
		allowedDependencies = { "wording", "rules", "entry", "baseline", "illness :: core", "exchange :: csv" })
package org.fallow.assess;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
