package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.fallow.entry.Fact;
import org.fallow.entry.Facts;
import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.State;
import org.fallow.illness.core.Timeline;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;

import org.springframework.stereotype.Component;

/**
 * Runs the fold over an athlete's stored facts, from the nearest stored state on.
 */
@Component
class Replays {

	private final Facts facts;

	private final EventRows events;

	private final AssessmentRows rows;

	private final RuleSets ruleSets;

	Replays(Facts facts, EventRows events, AssessmentRows rows, RuleSets ruleSets) {
		this.facts = facts;
		this.events = events;
		this.rows = rows;
		this.ruleSets = ruleSets;
	}

	/**
	 * Known then, for the days from {@code from} on. Earlier days may be among them: the
	 * fold begins after the nearest stored state, or, where a fact speaks of a day before
	 * the first one decided, at that fact's day.
	 * @param athlete whose
	 * @param from first day asked for
	 * @param to last day, inclusive
	 * @param trial facts to be added without being stored
	 * @return assessments in order of days, empty if nothing is known yet
	 */
	List<DayAssessment> replay(Athlete athlete, LocalDate from, LocalDate to, List<Fact> trial) {
		RuleBook rules = this.ruleSets.bookOf(athlete.teamId());
		Optional<State> state = this.rows.stateBefore(athlete.id(), from);
		LocalDate start = state.map(State::factsFrom).orElse(LocalDate.EPOCH);
		Timeline timeline = timeline(athlete, start, trial);
		if (state.isEmpty() || isBeforeTheFirst(athlete, timeline)) {
			return Course.of(timeline(athlete, LocalDate.EPOCH, trial), rules, to);
		}
		return Course.from(state.get(), timeline, rules, to);
	}

	/** Known now: all facts as if each had been known on its day. */
	List<DayAssessment> knownNow(Athlete athlete, LocalDate to) {
		RuleBook rules = this.ruleSets.bookOf(athlete.teamId());
		return Course.of(timeline(athlete, LocalDate.EPOCH, List.of()).knownNow(), rules, to);
	}

	/** All facts of an athlete, as they became known. */
	Timeline everything(Athlete athlete) {
		return timeline(athlete, LocalDate.EPOCH, List.of());
	}

	private boolean isBeforeTheFirst(Athlete athlete, Timeline timeline) {
		return this.rows.firstDay(athlete.id()).filter((first) -> timeline.firstDay().isBefore(first)).isPresent();
	}

	private Timeline timeline(Athlete athlete, LocalDate from, List<Fact> trial) {
		List<Fact> all = new ArrayList<>(this.facts.of(athlete.id(), from));
		this.events.of(athlete.id()).forEach((stored) -> all.add(stored.event()));
		all.addAll(trial);
		return new Timeline(all, athlete.adultFrom());
	}

}
