/**
 * The outside world: CSV files of mornings, and the demo squad.
 */
@NullMarked
package org.fallow.exchange;

import org.jspecify.annotations.NullMarked;
