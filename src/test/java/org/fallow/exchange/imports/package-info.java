/**
 * Tests of imports on a real database.
 */
@NullMarked
package org.fallow.exchange.imports;

import org.jspecify.annotations.NullMarked;
