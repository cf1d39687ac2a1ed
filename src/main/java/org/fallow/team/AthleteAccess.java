package org.fallow.team;

import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.springframework.stereotype.Component;

/**
 * Whom the signed-in person may look at: athletes themselves, coaches the athletes of
 * their own teams. For anybody else an athlete does not exist.
 */
@Component
public class AthleteAccess {

	private final CurrentPerson current;

	private final Squad squad;

	AthleteAccess(CurrentPerson current, Squad squad) {
		this.current = current;
		this.squad = squad;
	}

	/**
	 * The signed-in person.
	 * @return the id
	 * @throws IllegalStateException if nobody is signed in
	 */
	public PersonId person() {
		return this.current.id().orElseThrow(() -> new IllegalStateException("nobody is signed in"));
	}

	/**
	 * The signed-in person as an athlete.
	 * @return the athlete
	 * @throws NoSuchAthlete if the person is none
	 */
	public Athlete self() {
		return this.squad.athlete(person());
	}

	/**
	 * An athlete of the signed-in coach.
	 * @param id whose page is asked for
	 * @return the athlete
	 * @throws NoSuchAthlete if there is none of this id in a team the person coaches
	 */
	public Athlete coached(UUID id) {
		PersonId athlete = new PersonId(id);
		if (!this.squad.mayCoach(person(), athlete)) {
			throw new NoSuchAthlete(athlete);
		}
		return this.squad.athlete(athlete);
	}

}
