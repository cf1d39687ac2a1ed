/**
 * Rule sets: every number a decision depends on, versioned and hashed.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform", "team" })
package org.fallow.rules;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
