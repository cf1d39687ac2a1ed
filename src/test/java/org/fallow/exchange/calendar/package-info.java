/**
 * Tests of calendars, some on a real database.
 */
@NullMarked
package org.fallow.exchange.calendar;

import org.jspecify.annotations.NullMarked;
