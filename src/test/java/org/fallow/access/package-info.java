/** Tests of who is asking. */
@NullMarked
package org.fallow.access;

import org.jspecify.annotations.NullMarked;
