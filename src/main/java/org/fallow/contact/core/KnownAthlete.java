package org.fallow.contact.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.entry.Absence;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.StageChange;
import org.jspecify.annotations.Nullable;

/**
 * What is known of an athlete, for the worklist.
 *
 * @param athlete who
 * @param today the athlete's civil day
 * @param since first day here
 * @param lastEntry day of the latest morning entered; absent before the first
 * @param days as they were decided, oldest first, without gaps; the last one is how the
 * athlete stands
 * @param changes what changed in episodes of late, oldest first
 * @param absences noted, in any order
 */
public record KnownAthlete(PersonId athlete, LocalDate today, LocalDate since, @Nullable LocalDate lastEntry,
		List<AssessedDay> days, List<StageChange> changes, List<Absence> absences) {

	/** Copies the lists. */
	public KnownAthlete {
		days = List.copyOf(days);
		changes = List.copyOf(changes);
		absences = List.copyOf(absences);
	}

	/** How the athlete stands; absent before the first fact. */
	@Nullable AssessedDay latest() {
		return this.days.isEmpty() ? null : this.days.get(this.days.size() - 1);
	}

	boolean inEpisode() {
		AssessedDay latest = latest();
		return latest != null && latest.inEpisode();
	}

}
