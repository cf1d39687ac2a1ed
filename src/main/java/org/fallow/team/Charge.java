package org.fallow.team;

/**
 * A group that a coach has in charge.
 *
 * @param group which
 * @param post by which post: never OWNER
 */
public record Charge(Group group, Post post) {
}
