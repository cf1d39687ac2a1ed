package org.fallow.contact.core;

import java.time.Instant;

/**
 * A coach's mark on a matter. Marks are only added; the last one of a matter counts.
 *
 * @param key what it is about
 * @param state how far the coach has come
 * @param note what was said
 * @param shared whether the athlete may read the note
 * @param at when it was marked
 * @param by the coach's name; empty where the reader may not know it
 */
public record Mark(MatterKey key, MarkState state, String note, boolean shared, Instant at, String by) {
}
