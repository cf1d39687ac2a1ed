package org.fallow.contact.core;

import java.time.LocalDate;

import org.fallow.access.PersonId;

/**
 * Names what needs a word, the same from day to day. The same matter that arises again
 * has another day, and so is another one.
 *
 * @param athlete who needs the word
 * @param matter why
 * @param arose civil day on which it arose, in the athlete's zone
 */
public record MatterKey(PersonId athlete, Matter matter, LocalDate arose) {
}
