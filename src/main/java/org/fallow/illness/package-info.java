/**
 * Illness episodes and the return: runs the fold and stores assessment, status and
 * decision.
 */
@NullMarked
package org.fallow.illness;

import org.jspecify.annotations.NullMarked;
