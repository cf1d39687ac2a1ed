/** Tests of the module {@code illness}. */
@NullMarked
package org.fallow.illness;

import org.jspecify.annotations.NullMarked;
