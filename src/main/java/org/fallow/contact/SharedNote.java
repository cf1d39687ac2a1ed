package org.fallow.contact;

import java.time.LocalDateTime;

/**
 * What a coach shared with an athlete of a word they had.
 *
 * @param by the coach's name; empty where the athlete may not know it any more
 * @param note what was said
 * @param at when it was noted, in the athlete's zone
 */
public record SharedNote(String by, String note, LocalDateTime at) {
}
