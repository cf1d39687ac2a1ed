/**
 * Illness episodes and the return: runs the fold and stores assessment, status and
 * decision.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform", "team", "rules", "entry", "baseline" })
package org.fallow.illness;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
