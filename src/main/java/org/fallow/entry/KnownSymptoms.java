package org.fallow.entry;

import org.fallow.rules.RuleSets;
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
 * Symptoms of athletes that are known to be no illness.
 */
@Service
@Transactional
public class KnownSymptoms {

	static final String TABLE = "known_symptom";

	private final SmallFacts facts;

	private final JdbcClient client;

	private final RuleSets ruleSets;

	KnownSymptoms(SmallFacts facts, JdbcClient client, RuleSets ruleSets) {
		this.facts = facts;
		this.client = client;
		this.ruleSets = ruleSets;
	}

	/**
	 * Stores one.
	 * @param id whose
	 * @param entered what was entered
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@OfAthlete
	public Saved save(PersonId id, NewKnownSymptom entered, Submission submission) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		List<Problem> problems = new ArrayList<>();
		Days.check(problems, "day", entered.day(), this.facts.today(athlete), submission.source());
		check(problems, entered);
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		Recorded recorded = this.facts.recorded(athlete, entered.day(), entered.recordedOn(), submission,
				HistoryTime.MORNING);
		int days = this.ruleSets.on(athlete.teamId(), recorded.on()).told().knownDays();
		KnownSymptom fact = new KnownSymptom(entered.day(), entered.day().plusDays(days - 1L), recorded,
				entered.symptom(), entered.severity(), entered.cause(), entered.word());
		return this.facts.add(TABLE, athlete, null, fact, submission, "until_day, symptom, severity, cause, word",
				fact.until(), fact.symptom(), fact.severity(), fact.cause(), fact.word());
	}

	private static void check(List<Problem> problems, NewKnownSymptom entered) {
		Symptom symptom = entered.symptom();
		if (symptom.isRedFlag() || symptom.classAt(entered.severity()) == SymptomClass.FEVER) {
			problems.add(Problem.of("symptom", "known-symptom.never"));
		}
		else if (!entered.cause().allows(symptom, entered.severity())) {
			problems.add(Problem.of("symptom", "known-symptom.not-listed"));
		}
		String word = entered.word();
		if (entered.cause().needsAWord() && (word == null || word.isBlank())) {
			problems.add(Problem.of("word", "known-symptom.word"));
		}
		Words.check(problems, "word", word);
	}

	/**
	 * All of an athlete.
	 * @param athlete whose
	 * @return in the order recorded
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<KnownSymptom> of(PersonId athlete) {
		return this.client
			.sql("select * from known_symptom where athlete_id = " + SeveralEntries.IDS
					+ " order by recorded_on, recorded_at, key")
			.param("athlete", athlete.value())
			.query(KnownSymptoms::read)
			.list();
	}

	private static KnownSymptom read(ResultSet row, int number) throws SQLException {
		return new KnownSymptom(Columns.day(row, "day"), Columns.day(row, "until_day"), Columns.recorded(row),
				Symptom.valueOf(row.getString("symptom")), Severity.valueOf(row.getString("severity")),
				KnownCause.valueOf(row.getString("cause")), row.getString("word"));
	}

}
