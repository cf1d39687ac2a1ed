package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.jspecify.annotations.Nullable;

/**
 * A clinician's own figure for a person: from here on readings taken in one way are too
 * fast at rest, instead of the rules' figure. It works from its recording on.
 *
 * @param day the day it was recorded
 * @param recorded when it was recorded
 * @param method how the readings are taken
 * @param posture how the athlete is placed
 * @param bpm the figure, bpm
 * @param who the clinician's name
 * @param role the clinician's role
 * @param spokenOn the day the clinician said so
 * @param note the clinician's words
 */
public record OwnFigure(LocalDate day, Recorded recorded, Method method, Posture posture, double bpm, String who,
		String role, LocalDate spokenOn, @Nullable String note) implements IllnessEvent {

	/**
	 * Refuses a figure that is back-dated, of a later day or so high that readings which
	 * are asked about at once would be below it.
	 */
	public OwnFigure {
		if (!day.equals(recorded.on()) || spokenOn.isAfter(day)) {
			throw new IllegalArgumentException("an own figure works from its recording on");
		}
		if (!(bpm > 0 && bpm <= FastAtRest.mostOwn(posture))) {
			throw new IllegalArgumentException("no figure a clinician can give: " + bpm);
		}
	}

}
