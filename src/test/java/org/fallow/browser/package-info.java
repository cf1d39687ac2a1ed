/** Tests of the whole application through a real browser. */
@NullMarked
package org.fallow.browser;

import org.jspecify.annotations.NullMarked;
