package org.fallow.team;

import java.util.Collection;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.springframework.stereotype.Component;

/**
 * Whom the present person may look at: athletes themselves, coaches the athletes whom
 * their posts cover and who share their data. For anybody else an athlete does not exist.
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

	/**
	 * Whether the present person may see and enter an athlete's data.
	 * @param athlete whose
	 * @return true for the athlete and for the coaches who cover the athlete
	 */
	public boolean maySee(PersonId athlete) {
		return this.current.id()
			.filter((person) -> person.equals(athlete) || this.squad.mayCoach(person, athlete))
			.isPresent();
	}

	/**
	 * Whether the present person may see the data of each of several athletes.
	 * @param athletes whose
	 * @return true if so
	 */
	public boolean maySeeAll(Collection<PersonId> athletes) {
		return this.current.id()
			.filter((person) -> athletes.stream().allMatch(person::equals) || this.squad.mayCoachAll(person, athletes))
			.isPresent();
	}

	/**
	 * Whether the present person may record what can loosen an athlete's clearance: a
	 * clinician's word, a withdrawal, a working level. A deputy may not, nor the athlete.
	 * @param athlete whose
	 * @return true for a head coach or coach of groups who covers the athlete
	 */
	public boolean mayLoosen(PersonId athlete) {
		return this.current.id()
			.flatMap((person) -> this.squad.postFor(person, athlete))
			.filter((post) -> post == Post.HEAD_COACH || post == Post.GROUP_COACH)
			.isPresent();
	}

	/**
	 * Whether the present person may look after an athlete: whatever is stricter.
	 * @param athlete whose
	 * @return true for a coach in any post who covers the athlete
	 */
	public boolean mayCoach(PersonId athlete) {
		return this.current.id().filter((person) -> this.squad.mayCoach(person, athlete)).isPresent();
	}

	/**
	 * Whether the present person leads a team: its rules, its people, its imports.
	 * @param teamId the team
	 * @return true for its head coaches
	 */
	public boolean leads(UUID teamId) {
		return this.current.id().filter((person) -> this.squad.leads(person, teamId)).isPresent();
	}

}
