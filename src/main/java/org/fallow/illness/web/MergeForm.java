package org.fallow.illness.web;

import org.jspecify.annotations.Nullable;

/**
 * What a coach says of two entries.
 *
 * @param other id of the other entry
 * @param reason why they are one person
 * @param requestId names the sending
 */
public record MergeForm(@Nullable String other, @Nullable String reason, @Nullable String requestId) {
}
