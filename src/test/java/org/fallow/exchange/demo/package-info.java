/**
 * Writes the invented demo squad and checks what Fallow decides about it.
 */
@NullMarked
package org.fallow.exchange.demo;

import org.jspecify.annotations.NullMarked;
