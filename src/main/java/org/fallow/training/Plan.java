package org.fallow.training;

import java.time.LocalDate;
import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.training.core.ModifiedSession;
import org.fallow.training.core.Position;
import org.fallow.training.core.Rejoin;
import org.fallow.training.core.UsualVolume;
import org.jspecify.annotations.Nullable;

/**
 * An athlete's coming sessions.
 *
 * @param athlete whose
 * @param position where the athlete stands
 * @param usual what the athlete usually runs; unknown where nobody needed it
 * @param sessions what becomes of each session of the programme, by day
 * @param ceilings what heart rate is measured by
 * @param rejoin when the athlete would be with the group again; absent without a return,
 * and where nothing can be said
 * @param ranToday minutes of running already logged today; 0 for none
 */
public record Plan(PersonId athlete, Position position, UsualVolume usual, List<ModifiedSession> sessions,
		Ceilings ceilings, @Nullable Rejoin rejoin, int ranToday) {

	/** Copies the sessions. */
	public Plan {
		sessions = List.copyOf(sessions);
	}

	/**
	 * The sessions of a day.
	 * @param day which
	 * @return in order; may be empty
	 */
	public List<ModifiedSession> on(LocalDate day) {
		return this.sessions.stream().filter((one) -> one.programmed().day().equals(day)).toList();
	}

}
