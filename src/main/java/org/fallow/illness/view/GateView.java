package org.fallow.illness.view;

import java.time.LocalDate;
import java.util.List;

import org.fallow.illness.core.Criterion;
import org.fallow.illness.core.CriterionState;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.GateSheet;
import org.fallow.rules.RuleBook;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A gate sheet as it is read.
 *
 * @param into what it leads to: a stage, or the end
 * @param earliest earliest day it could open; absent under a hold
 * @param criteria all criteria
 */
public record GateView(Message into, @Nullable LocalDate earliest, List<Line> criteria) {

	/**
	 * The view of an assessment's next gate.
	 * @param assessment the day's
	 * @param book the team's rule sets
	 * @return its view; null without an open episode
	 */
	public static @Nullable GateView of(DayAssessment assessment, RuleBook book) {
		GateSheet gate = assessment.gate();
		if (gate == null) {
			return null;
		}
		boolean hold = assessment.holding();
		return new GateView(StageView.next(gate, StageView.path(assessment, book)), hold ? null : gate.earliest(),
				gate.criteria().stream().map((criterion) -> line(criterion, hold)).toList());
	}

	private static Line line(Criterion criterion, boolean hold) {
		String name = "criterion." + criterion.code();
		Message required = Said.of(new Message(name + ".required", List.copyOf(criterion.required())));
		return new Line(criterion.code(), criterion.state(), required, observed(name, criterion), criterion.since(),
				hold ? null : criterion.earliest());
	}

	private static @Nullable Message observed(String name, Criterion criterion) {
		boolean told = criterion.state() == CriterionState.MET || criterion.state() == CriterionState.NOT_MET;
		if (!told) {
			return null;
		}
		if (criterion.observed().size() > 1) {
			return waiting(name, criterion.observed());
		}
		boolean plain = criterion.observed().stream().allMatch(String::isEmpty);
		return plain ? Message.of(name + "." + criterion.state())
				: Said.of(new Message(name + ".observed", List.copyOf(criterion.observed())));
	}

	/** Sessions that wait for the next morning: how many, and from when they count. */
	private static Message waiting(String name, List<String> observed) {
		return Said.of(Message.of(name + ".waits", observed.get(0), observed.get(1), LocalDate.parse(observed.get(2))));
	}

	/**
	 * One criterion.
	 *
	 * @param code which
	 * @param state how it stands
	 * @param required what is asked
	 * @param observed what was seen; absent where it does not apply or cannot be told
	 * @param since first day of the unbroken run of days on which it stands so
	 * @param earliest earliest day it could be met; absent where none can be named
	 */
	public record Line(String code, CriterionState state, Message required, @Nullable Message observed,
			@Nullable LocalDate since, @Nullable LocalDate earliest) {
	}

}
