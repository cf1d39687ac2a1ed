/**
 * Facts of an athlete's days: mornings, sessions, absences, medicines, and the measuring
 * behind them.
 */
@NullMarked
package org.fallow.entry;

import org.jspecify.annotations.NullMarked;
