/**
 * How people sign in: accounts, passwords, sessions, and the pages that manage people.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform", "team" })
package org.fallow.account;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
