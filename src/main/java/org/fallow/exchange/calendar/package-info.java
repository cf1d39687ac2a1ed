/**
 * The calendar of an athlete, as calendar programs read it (RFC 5545): what to run and
 * when, and nothing about health, because calendars are shared.
 */
@NullMarked
package org.fallow.exchange.calendar;

import org.jspecify.annotations.NullMarked;
