/**
 * What every module rests on: the home folder, the database, the clock and a start that
 * fails in one sentence.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package org.fallow.platform;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
