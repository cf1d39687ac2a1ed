package org.fallow.exchange.calendar;

import java.time.Instant;

/**
 * An event as it is sent.
 *
 * @param event its content
 * @param sequence how often that changed, from 0
 * @param cancelled whether it is gone from the programme
 * @param changedAt when its content changed last
 */
record SentEvent(CalendarEvent event, int sequence, boolean cancelled, Instant changedAt) {
}
