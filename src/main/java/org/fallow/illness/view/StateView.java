package org.fallow.illness.view;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.illness.core.Criterion;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.GateSheet;
import org.fallow.rules.Clearance;
import org.fallow.rules.RuleBook;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What an athlete and a coach read first: the clearance, why, and what opens next.
 *
 * @param day the day
 * @param clearance what the athlete may do
 * @param reasons why, strictest first
 * @param opensNext what the next gate still waits for
 * @param earliest earliest day of the next gate; absent under a hold or where none can be
 * named
 * @param nextStage what the next gate leads to: a stage, or the end; absent without an
 * episode
 * @param hold whether a clinician hold stands
 */
public record StateView(LocalDate day, Clearance clearance, List<Message> reasons, List<Message> opensNext,
		@Nullable LocalDate earliest, @Nullable Message nextStage, boolean hold) {

	/**
	 * The view of an assessment.
	 * @param assessment the day's
	 * @param book the team's rule sets
	 * @return its view
	 */
	public static StateView of(DayAssessment assessment, RuleBook book) {
		GateSheet gate = assessment.gate();
		boolean hold = assessment.holding();
		List<Message> opens = new ArrayList<>();
		if (gate != null && !hold) {
			gate.criteria().stream().filter(Criterion::shuts).map(StateView::open).forEach(opens::add);
		}
		return new StateView(assessment.day(), assessment.clearance(), Said.all(assessment.reasons()), opens,
				(gate == null || hold) ? null : gate.earliest(),
				(gate == null) ? null : StageView.next(gate, StageView.path(assessment, book)), hold);
	}

	private static Message open(Criterion criterion) {
		List<Object> arguments = new ArrayList<>();
		arguments.add(criterion.observed().isEmpty() ? "–" : criterion.observed().get(0));
		arguments.add(criterion.required().isEmpty() ? "" : criterion.required().get(0));
		boolean waits = criterion.code().equals("runs") && criterion.observed().size() > 1;
		if (waits) {
			arguments.add(criterion.observed().get(1));
			arguments.add(LocalDate.parse(criterion.observed().get(2)));
		}
		return Said.of(new Message("opens." + criterion.code() + (waits ? ".waits" : ""), arguments));
	}

}
