package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.illness.core.OwnFigure;
import org.jspecify.annotations.Nullable;

/**
 * A clinician's own figure for a person, as a coach records it.
 *
 * @param method how the readings are taken
 * @param posture how the athlete is placed
 * @param bpm from here on they are too fast at rest, bpm
 * @param who the clinician's name
 * @param role the clinician's role
 * @param spokenOn the day the clinician said so
 * @param note the clinician's words
 */
public record NewFigure(Method method, Posture posture, double bpm, String who, String role, LocalDate spokenOn,
		@Nullable String note) {

	OwnFigure event(Recorded recorded) {
		return new OwnFigure(recorded.on(), recorded, this.method, this.posture, this.bpm, this.who, this.role,
				this.spokenOn, this.note);
	}

}
