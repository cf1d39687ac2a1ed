package org.fallow.entry;

import org.fallow.team.OfAthlete;
import org.fallow.team.OfAthletes;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.wording.Problem;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * When athletes began or stopped a medicine that lowers the heart rate.
 */
@Service
@Transactional
public class Medicines {

	static final String TABLE = "medicine_change";

	private final SmallFacts facts;

	private final JdbcClient client;

	Medicines(SmallFacts facts, JdbcClient client) {
		this.facts = facts;
		this.client = client;
	}

	/**
	 * Stores one.
	 * @param id whose
	 * @param entered what was entered
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@OfAthlete
	public Saved save(PersonId id, NewMedicineChange entered, Submission submission) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		List<Problem> problems = new ArrayList<>();
		Days.check(problems, "day", entered.day(), this.facts.today(athlete), submission.source());
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		Recorded recorded = this.facts.recorded(athlete, entered.day(), entered.recordedOn(), submission,
				HistoryTime.MORNING);
		MedicineChange fact = new MedicineChange(entered.day(), recorded, entered.on());
		return this.facts.add(TABLE, athlete, null, fact, submission, "begun", fact.on());
	}

	/**
	 * All of an athlete.
	 * @param athlete whose
	 * @return in the order recorded
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<MedicineChange> of(PersonId athlete) {
		return this.client
			.sql("select * from medicine_change where athlete_id = " + SeveralEntries.IDS
					+ " order by recorded_on, recorded_at, key")
			.param("athlete", athlete.value())
			.query(Medicines::read)
			.list();
	}

	/**
	 * All of several athletes.
	 * @param athletes whose
	 * @return by athlete, without those who have none, each in the order recorded
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, List<MedicineChange>> of(Collection<PersonId> athletes) {
		Map<PersonId, List<MedicineChange>> found = new HashMap<>();
		this.client
			.sql("""
					select a.id as whose, m.* from unnest(?::uuid[]) as a (id)
						cross join lateral unnest(fallow_entries(a.id)) as e (id) join medicine_change m on m.athlete_id = e.id
					order by m.recorded_on, m.recorded_at, m.key""")
			.param(athletes.stream().map(PersonId::value).toArray(UUID[]::new))
			.query((row) -> {
				found.computeIfAbsent(new PersonId(row.getObject("whose", UUID.class)), (id) -> new ArrayList<>())
					.add(read(row, 0));
			});
		return found;
	}

	private static MedicineChange read(ResultSet row, int number) throws SQLException {
		return new MedicineChange(Columns.day(row, "day"), Columns.recorded(row), row.getBoolean("begun"));
	}

}
