/**
 * Tests of reading mornings from CSV files.
 */
@NullMarked
package org.fallow.exchange.csv;

import org.jspecify.annotations.NullMarked;
