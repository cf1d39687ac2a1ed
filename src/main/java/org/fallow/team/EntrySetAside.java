package org.fallow.team;

import org.fallow.access.PersonId;

/**
 * An entry was made part of another of the same person: its sign-in is closed.
 *
 * @param entry the entry
 */
public record EntrySetAside(PersonId entry) {
}
