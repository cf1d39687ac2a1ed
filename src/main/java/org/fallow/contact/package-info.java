/**
 * Words between coaches and athletes: who needs one and why, what coaches noted of it,
 * and the messages. Nothing here changes a clearance.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "wording", "access", "platform", "team", "rules", "entry", "illness",
		"illness :: core", "illness :: view" })
package org.fallow.contact;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
