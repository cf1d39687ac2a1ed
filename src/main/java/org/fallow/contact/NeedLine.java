package org.fallow.contact;

import java.time.LocalDateTime;
import java.util.UUID;

import org.fallow.contact.core.Mark;
import org.fallow.contact.core.MatterKey;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A line of the worklist as pages show it.
 *
 * @param key who, what and since when
 * @param name the athlete's
 * @param why half a line; absent where the matter has passed
 * @param mark the last mark; absent if there is none
 * @param marked when that was, in the reader's zone; absent likewise
 * @param requestId the sending of a form for a further mark
 */
public record NeedLine(MatterKey key, String name, @Nullable Message why, @Nullable Mark mark,
		@Nullable LocalDateTime marked, UUID requestId) {
}
