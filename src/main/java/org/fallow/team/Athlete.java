package org.fallow.team;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * An athlete as the other modules see one.
 *
 * @param id the person
 * @param name as the coach writes it
 * @param zone where the athlete's civil days are counted
 * @param birthDate absent where not told, which counts as under 18
 * @param teamId the home team, whose rule sets decide
 * @param groupId the group in that team; absent if none
 * @param since civil day, in the athlete's zone, the athlete was created here
 * @param externalCode the athlete's name in files that are imported; absent if none
 */
public record Athlete(PersonId id, String name, ZoneId zone, @Nullable LocalDate birthDate, UUID teamId,
		@Nullable UUID groupId, LocalDate since, @Nullable String externalCode) {

	/** Age from which a person is an adult. */
	public static final int ADULT = 18;

	/**
	 * Whether the athlete counts as a minor on a day.
	 * @param day the day in question
	 * @return true before the 18th birthday, and always without a birth date
	 */
	public boolean isUnder18(LocalDate day) {
		return isUnder18(this.birthDate, day);
	}

	/**
	 * The day the athlete comes of age: the 18th birthday, of someone born on 29 February
	 * 1 March (the later day, for which more is asked).
	 * @return absent without a birth date
	 */
	public @Nullable LocalDate adultFrom() {
		return (this.birthDate == null) ? null : this.birthDate.minusDays(1).plusYears(ADULT).plusDays(1);
	}

	/**
	 * Whether somebody of a birth date counts as a minor on a day.
	 * @param born the birth date; absent where not told
	 * @param day the day in question
	 * @return true before the 18th birthday, and always without a birth date
	 */
	public static boolean isUnder18(@Nullable LocalDate born, LocalDate day) {
		return born == null || born.minusDays(1).plusYears(ADULT).plusDays(1).isAfter(day);
	}

}
