package org.fallow.illness;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.entry.Columns;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.DayAssessment.Decision;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;

/**
 * Stores a single day that was decided in one statement, as most mornings are: its row,
 * its stage decisions in place of those it had, and the athlete's status.
 */
@Component
class OneDayRows {

	private static final String BEGIN = "with kept as (" + AssessmentRows.UPSERT + """
			), retracted as (delete from stage_decision where athlete_id = ? and day = ? returning number)\s""";

	/** Asks for what was retracted first, so that a number is free before it is used. */
	private static final String DECISIONS = """
			, added as (
				insert into stage_decision (athlete_id, day, number, kind, from_stage, to_stage, rule_hash, evidence)
				select ?, ?, d.number, d.kind, d.from_stage, d.to_stage, ?, ?
				from unnest(?, ?, ?) with ordinality as d (kind, from_stage, to_stage, number)
				where (select count(*) from retracted) >= 0)\s""";

	private static final String WITHOUT = BEGIN + StatusRows.UPDATE;

	private static final String WITH = BEGIN + DECISIONS + StatusRows.UPDATE;

	private final JdbcTemplate template;

	OneDayRows(JdbcTemplate template) {
		this.template = template;
	}

	void store(PersonId athlete, DayAssessment day) {
		List<@Nullable Object> values = new ArrayList<>(
				Arrays.asList(AssessmentRows.row(athlete, day, StateJson.write(day.state()))));
		values.addAll(List.of(athlete.value(), day.day()));
		List<Decision> decisions = day.decisions();
		if (!decisions.isEmpty()) {
			values.addAll(List.of(athlete.value(), day.day(), day.ruleHash(), EvidenceJson.write(day),
					Columns.array("text", decisions.stream().map(Decision::kind).toList()),
					Columns.array("integer", decisions.stream().map(Decision::fromStage).toList()),
					Columns.array("integer", decisions.stream().map(Decision::toStage).toList())));
		}
		values.addAll(List.of(day.day(), athlete.value(), athlete.value()));
		this.template.update(decisions.isEmpty() ? WITHOUT : WITH, values.toArray());
	}

}
