/**
 * What the pure cores say: a message code with its arguments; pages turn it into
 * sentences.
 */
@NullMarked
package org.fallow.wording;

import org.jspecify.annotations.NullMarked;
