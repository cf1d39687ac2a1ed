/**
 * Facts of an athlete's days: mornings, sessions, absences, medicines, and the measuring
 * behind them.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform", "team", "rules" })
package org.fallow.entry;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
