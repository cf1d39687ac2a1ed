package org.fallow.contact.core;

import org.fallow.wording.Message;

/**
 * One line of the worklist: somebody needs a word about one matter.
 *
 * @param key who, what and since when
 * @param why half a line
 */
public record Need(MatterKey key, Message why) {
}
