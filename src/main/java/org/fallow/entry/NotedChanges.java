package org.fallow.entry;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.team.OfAthlete;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What athletes note beside their mornings because later mornings are to be read
 * differently: vaccinations, and changes about the measuring.
 */
@Service
@Transactional
public class NotedChanges {

	static final String VACCINATION = "vaccination";

	static final String DEVICE_CHANGE = "device_change";

	private final SmallFacts facts;

	NotedChanges(SmallFacts facts) {
		this.facts = facts;
	}

	/**
	 * Stores a vaccination.
	 * @param id whose
	 * @param day its day, today or before
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@OfAthlete
	public Saved vaccinated(PersonId id, LocalDate day, Submission submission) {
		return save(VACCINATION, id, day, submission, "");
	}

	/**
	 * Stores a change about the measuring.
	 * @param id whose
	 * @param day the first morning after it, today or before
	 * @param what what changed
	 * @param method the way of measuring it is about; absent for all of them
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@OfAthlete
	public Saved measuredAnew(PersonId id, LocalDate day, DeviceChange.What what, @Nullable Method method,
			Submission submission) {
		return save(DEVICE_CHANGE, id, day, submission, "what, method", what, method);
	}

	private Saved save(String table, PersonId id, LocalDate day, Submission submission, String columns,
			@Nullable Object... values) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(table, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		List<Problem> problems = new ArrayList<>();
		Days.check(problems, "day", day, this.facts.today(athlete), submission.source());
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		Recorded recorded = this.facts.recorded(athlete, day, null, submission, HistoryTime.MORNING);
		return this.facts.add(table, athlete, null, new Vaccination(day, recorded), submission, columns, values);
	}

}
