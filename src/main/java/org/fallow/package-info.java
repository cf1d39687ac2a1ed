/**
 * Fallow's modules; each subpackage is one, and its own package-info says what it may
 * use.
 */
@NullMarked
package org.fallow;

import org.jspecify.annotations.NullMarked;
