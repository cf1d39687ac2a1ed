/** Tests of the module {@code team}. */
@NullMarked
package org.fallow.team;

import org.jspecify.annotations.NullMarked;
