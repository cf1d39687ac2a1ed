package org.fallow.illness;

/**
 * A working level as a coach sets it. The level itself is computed.
 *
 * @param who the clinician's name
 * @param role the clinician's role
 * @param word what the clinician said
 * @param reason the coach's reason
 */
public record NewWorkingLevel(String who, String role, String word, String reason) {
}
