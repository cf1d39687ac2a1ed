/**
 * What a coach looks at: the squad board and one athlete's page; reads only.
 */
@ApplicationModule(allowedDependencies = { "wording", "access", "platform", "team", "rules", "entry", "baseline",
		"illness", "illness :: core", "illness :: view", "training", "training :: core", "contact" })
@NullMarked
package org.fallow.board;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
