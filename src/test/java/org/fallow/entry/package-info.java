/** Tests of the module {@code entry}. */
@NullMarked
package org.fallow.entry;

import org.jspecify.annotations.NullMarked;
