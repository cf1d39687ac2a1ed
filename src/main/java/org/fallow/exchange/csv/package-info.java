/**
 * Reads mornings from CSV files: what a file is, which column is which, what a row says.
 * Pure but for the file itself: no store, no clock.
 */
@NullMarked
@NamedInterface("csv")
package org.fallow.exchange.csv;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
