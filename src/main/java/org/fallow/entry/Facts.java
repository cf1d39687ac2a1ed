package org.fallow.entry;

import org.fallow.team.OfAthlete;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.access.PersonId;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * All that an athlete's days are decided from, apart from what people decided about an
 * illness.
 */
@Service
@Transactional(readOnly = true)
public class Facts {

	private final MorningRows mornings;

	private final Sessions sessions;

	private final Absences absences;

	private final Medicines medicines;

	private final KnownSymptoms knownSymptoms;

	private final HealthConditions conditions;

	Facts(MorningRows mornings, Sessions sessions, Absences absences, Medicines medicines, KnownSymptoms knownSymptoms,
			HealthConditions conditions) {
		this.mornings = mornings;
		this.sessions = sessions;
		this.absences = absences;
		this.medicines = medicines;
		this.knownSymptoms = knownSymptoms;
		this.conditions = conditions;
	}

	/**
	 * The facts of an athlete, all revisions among them.
	 * @param athlete whose
	 * @param from mornings and sessions from this day on; everything else whenever it was
	 * @return the facts, those of one instant in the order they were stored
	 */
	@OfAthlete
	public List<Fact> of(PersonId athlete, LocalDate from) {
		List<Fact> facts = new ArrayList<>();
		this.mornings.since(athlete, from).forEach((morning) -> facts.add(morning.entry()));
		facts.addAll(this.sessions.since(athlete, from));
		facts.addAll(this.absences.all(athlete));
		facts.addAll(this.medicines.of(athlete));
		facts.addAll(this.knownSymptoms.of(athlete));
		facts.addAll(this.conditions.of(athlete));
		return facts;
	}

}
