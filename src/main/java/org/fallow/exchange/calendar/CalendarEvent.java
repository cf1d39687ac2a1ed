package org.fallow.exchange.calendar;

import java.time.LocalDate;
import java.time.LocalTime;

import org.fallow.access.PersonId;
import org.fallow.access.Secret;
import org.jspecify.annotations.Nullable;

/**
 * An event of an athlete's calendar.
 *
 * @param uid names it in calendars for good
 * @param day civil day, where the athlete is
 * @param time when it begins, local time; absent for the whole day
 * @param minutes how long it lasts; above 0 where there is a time
 * @param summary its title
 * @param description what to do
 * @param place where; may be empty
 */
record CalendarEvent(String uid, LocalDate day, @Nullable LocalTime time, int minutes, String summary,
		String description, String place) {

	private static final int UID_DIGITS = 40;

	CalendarEvent {
		if (time != null && minutes < 1) {
			throw new IllegalArgumentException("an event with a time lasts a minute at least");
		}
	}

	/** The name of an athlete's event: it says neither whose nor which to strangers. */
	static String uid(PersonId athlete, String key) {
		return Secret.sha256(athlete + " " + key).substring(0, UID_DIGITS) + "@fallow";
	}

	/** What a change shows in. */
	String hash() {
		return Secret.sha256(String.join("\u0000", this.day.toString(), String.valueOf(this.time),
				String.valueOf(this.minutes), this.summary, this.description, this.place));
	}

}
