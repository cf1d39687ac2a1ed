/**
 * What the pure cores say: a message code with its arguments; pages turn it into
 * sentences.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package org.fallow.wording;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
