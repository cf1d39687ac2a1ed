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
 * @param about whom else it is about, as named at the time: who holds a post, or made a
 * link that was used; absent for most
 * @param post the post given or ended; absent for what is about none
 * @param linkBy who had made the link by which the password of the actor's sign-in had
 * been set; absent for a sign-in of the actor's own
 */
public record TraceLine(UUID id, Instant at, TraceActor actor, TraceAction action, TraceSubject what,
		@Nullable String address, @Nullable String about, @Nullable String post, @Nullable String linkBy) {
}
