/**
 * Rule sets: every number a decision depends on, versioned and hashed.
 */
@NullMarked
package org.fallow.rules;

import org.jspecify.annotations.NullMarked;
