package org.fallow.access;

import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * One line of a trace.
 *
 * @param id sorts by time
 * @param at when
 * @param actor who
 * @param action looked or changed
 * @param what which page or fact
 * @param address network address it came from; absent for work without a request
 */
public record TraceLine(UUID id, Instant at, TraceActor actor, TraceAction action, TraceSubject what,
		@Nullable String address) {
}
