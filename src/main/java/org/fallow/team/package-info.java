/**
 * People, clubs, teams, groups, their roles and their accounts.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform" })
package org.fallow.team;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
