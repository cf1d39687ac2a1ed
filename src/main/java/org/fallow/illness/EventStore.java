package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;

import org.fallow.access.PersonId;
import org.fallow.entry.HistoryTime;
import org.fallow.entry.Recorded;
import org.fallow.entry.Saved;
import org.fallow.entry.SmallFacts;
import org.fallow.entry.Source;
import org.fallow.entry.Submission;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.rules.RuleSet;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * Stores an event once it is checked: the same sending once, and nothing of what is
 * refused.
 */
@Component
class EventStore {

	private final SmallFacts facts;

	private final RuleSets ruleSets;

	EventStore(SmallFacts facts, RuleSets ruleSets) {
		this.facts = facts;
		this.ruleSets = ruleSets;
	}

	/** The rules in effect on the athlete's today. */
	RuleSet rules(Athlete athlete) {
		return this.ruleSets.on(athlete.teamId(), today(athlete));
	}

	/** The athlete's today, once the athlete is locked. */
	LocalDate today(PersonId id) {
		return this.facts.today(this.facts.begin(id));
	}

	LocalDate today(Athlete athlete) {
		return this.facts.today(athlete);
	}

	/** The day an event counts as recorded: nothing it decides may lie before. */
	LocalDate earliest(Athlete athlete, LocalDate day, Submission submission) {
		return (submission.source() == Source.IMPORT)
				? this.facts.recorded(athlete, day, null, submission, HistoryTime.EVENT).on()
				: this.facts.today(athlete);
	}

	Saved add(PersonId id, Submission submission, LocalDate day, @Nullable LocalDate claimed,
			BiConsumer<List<Problem>, Athlete> check, Function<Recorded, IllnessEvent> event) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(EventRows.TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		List<Problem> problems = new ArrayList<>();
		check.accept(problems, athlete);
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		IllnessEvent fact = event.apply(this.facts.recorded(athlete, day, claimed, submission, HistoryTime.EVENT));
		return this.facts.add(EventRows.TABLE, athlete, null, fact, submission, EventRows.COLUMNS,
				EventRows.values(fact));
	}

}
