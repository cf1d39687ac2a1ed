package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Columns;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.DayAssessment.Decision;

import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The rows of stage decisions: those of a day are replaced when the day is decided anew,
 * which happens to the day of the newest fact and the days after it.
 */
@Component
class DecisionRows {

	private final JdbcClient client;

	private final JdbcTemplate template;

	DecisionRows(JdbcClient client, JdbcTemplate template) {
		this.client = client;
		this.template = template;
	}

	void store(PersonId athlete, List<DayAssessment> days) {
		List<Object[]> rows = new ArrayList<>();
		for (DayAssessment day : days) {
			int number = 0;
			for (Decision decision : day.decisions()) {
				rows.add(Columns.of(athlete.value(), day.day(), ++number, decision.kind(), decision.fromStage(),
						decision.toStage(), day.ruleHash(), EvidenceJson.write(day)));
			}
		}
		retract(athlete, days);
		this.template.batchUpdate("""
				insert into stage_decision (athlete_id, day, number, kind, from_stage, to_stage, rule_hash, evidence)
				values (?, ?, ?, ?, ?, ?, ?, ?)""", rows);
	}

	/** Of the days decided anew; other than facts these follow from what is stored. */
	private void retract(PersonId athlete, List<DayAssessment> days) {
		this.client.sql("delete from stage_decision where athlete_id = ? and day between ? and ?")
			.params(athlete.value(), days.get(0).day(), days.get(days.size() - 1).day())
			.update();
	}

	List<StageDecision> of(PersonId athlete) {
		return this.client.sql("select * from stage_decision where athlete_id = ? order by day desc, number desc")
			.param(athlete.value())
			.query((row, n) -> new StageDecision(row.getObject("day", LocalDate.class), row.getInt("number"),
					new Decision(Decision.Kind.valueOf(row.getString("kind")), row.getInt("from_stage"),
							row.getInt("to_stage")),
					row.getString("rule_hash"), row.getString("evidence")))
			.list();
	}

	List<StageChange> since(Collection<PersonId> athletes, LocalDate from) {
		return this.client.sql("""
				select athlete_id, day, kind, from_stage, to_stage from stage_decision
				where athlete_id = any (:ids) and day >= :from order by day, number, athlete_id""")
			.param("ids", AssessmentRows.ids(athletes))
			.param("from", from)
			.query((row, n) -> new StageChange(new PersonId(row.getObject("athlete_id", UUID.class)),
					row.getObject("day", LocalDate.class),
					new Decision(Decision.Kind.valueOf(row.getString("kind")), row.getInt("from_stage"),
							row.getInt("to_stage"))))
			.list();
	}

}
