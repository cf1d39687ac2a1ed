package org.fallow.entry;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;

import org.fallow.team.Athlete;
import org.fallow.team.Today;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * Says when a fact counts as having become known (docs/decisions/0003): now, except for
 * history. History is what is imported on the very day an athlete was created here and
 * speaks of days before; it counts as known on the day it speaks of.
 */
@Component
public class Recording {

	private final Clock clock;

	private final Today today;

	Recording(Clock clock, Today today) {
		this.clock = clock;
		this.today = today;
	}

	/**
	 * The athlete's today.
	 * @param athlete whose
	 * @return the civil day in the athlete's zone
	 */
	public LocalDate today(Athlete athlete) {
		return this.today.of(athlete);
	}

	/**
	 * The present instant in the database's precision.
	 * @return now, in microseconds
	 */
	public Instant now() {
		return this.clock.instant().truncatedTo(ChronoUnit.MICROS);
	}

	/**
	 * When a fact counts as known.
	 * @param athlete whose
	 * @param day the day it speaks of
	 * @param claimed the day a file says it became known; absent for the day itself.
	 * Looked at for history only
	 * @param source by which way it came
	 * @param historyTime local time at which history counts as known: mornings first,
	 * sessions last
	 * @return the instant and the civil day
	 */
	public Recorded recorded(Athlete athlete, LocalDate day, @Nullable LocalDate claimed, Source source,
			LocalTime historyTime) {
		LocalDate today = today(athlete);
		if (source != Source.IMPORT || !today.equals(athlete.since()) || !day.isBefore(today)) {
			return new Recorded(now(), today);
		}
		LocalDate on = (claimed == null || claimed.isBefore(day)) ? day : claimed;
		if (!on.isBefore(today)) {
			return new Recorded(now(), today);
		}
		return new Recorded(on.atTime(historyTime).atZone(athlete.zone()).toInstant(), on);
	}

}
