package org.fallow.entry;

import org.fallow.team.OfAthlete;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.wording.Problem;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Conditions of athletes that make any illness a clinician's matter.
 */
@Service
@Transactional
public class HealthConditions {

	static final String TABLE = "health_condition";

	private final SmallFacts facts;

	private final JdbcClient client;

	HealthConditions(SmallFacts facts, JdbcClient client) {
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
	public Saved save(PersonId id, NewHealthCondition entered, Submission submission) {
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
		HealthCondition fact = new HealthCondition(entered.day(), recorded, entered.kind(), entered.present());
		return this.facts.add(TABLE, athlete, null, fact, submission, "kind, present", fact.kind(), fact.present());
	}

	/**
	 * All of an athlete.
	 * @param athlete whose
	 * @return in the order recorded
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<HealthCondition> of(PersonId athlete) {
		return this.client
			.sql("select * from health_condition where athlete_id = " + SeveralEntries.IDS
					+ " order by recorded_on, recorded_at, key")
			.param("athlete", athlete.value())
			.query(HealthConditions::read)
			.list();
	}

	private static HealthCondition read(ResultSet row, int number) throws SQLException {
		return new HealthCondition(Columns.day(row, "day"), Columns.recorded(row),
				HealthCondition.Kind.valueOf(row.getString("kind")), row.getBoolean("present"));
	}

}
