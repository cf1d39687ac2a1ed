/**
 * People, clubs, teams, groups, their roles.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform" })
package org.fallow.team;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
