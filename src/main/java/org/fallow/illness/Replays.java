package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

import org.fallow.entry.Fact;
import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.State;
import org.fallow.illness.core.Timeline;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * Runs the fold over an athlete's stored facts, from the nearest stored state on.
 */
@Component
class Replays {

	private final FoldRows rows;

	private final RuleSets ruleSets;

	Replays(FoldRows rows, RuleSets ruleSets) {
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
		return replay(athlete, this.rows.before(athlete, from), to, trial);
	}

	/**
	 * Known then, for the days from {@code from} on up to the athlete's today, or to the
	 * latest day decided where that is later: an athlete who moves west lives a day
	 * twice, and what is entered then works on the day already decided too.
	 * @param athlete whose
	 * @param from first day asked for
	 * @param today the athlete's today
	 * @return as above
	 */
	List<DayAssessment> replay(Athlete athlete, LocalDate from, LocalDate today) {
		FoldRows.Input input = this.rows.before(athlete, from);
		LocalDate last = input.last();
		return replay(athlete, input, (last != null && last.isAfter(today)) ? last : today, List.of());
	}

	/**
	 * A day as it would be decided from other facts.
	 * @param athlete whose
	 * @param day the day
	 * @param change makes the other facts of the stored ones
	 * @return the day; absent if nothing is known of it
	 */
	@Nullable DayAssessment changed(Athlete athlete, LocalDate day, UnaryOperator<List<Fact>> change) {
		List<DayAssessment> days = replay(athlete, this.rows.before(athlete, day), day, change);
		return days.isEmpty() ? null : days.get(days.size() - 1);
	}

	/** What is known of an athlete, of mornings and sessions those of the last months. */
	Timeline lately(Athlete athlete, LocalDate day) {
		return new Timeline(this.rows.before(athlete, day).facts(), athlete.adultFrom());
	}

	private List<DayAssessment> replay(Athlete athlete, FoldRows.Input input, LocalDate to, List<Fact> trial) {
		return replay(athlete, input, to, (facts) -> {
			List<Fact> all = new ArrayList<>(facts);
			all.addAll(trial);
			return all;
		});
	}

	private List<DayAssessment> replay(Athlete athlete, FoldRows.Input input, LocalDate to,
			UnaryOperator<List<Fact>> trial) {
		RuleBook rules = this.ruleSets.bookOf(athlete.teamId(), input.listed());
		State state = input.state();
		if (state == null) {
			return from(input.keepBefore(), fromTheFirstFact(input.older(),
					timeline(athlete, this.rows.facts(athlete, LocalDate.EPOCH), trial), rules, to));
		}
		LocalDate start = state.factsFrom();
		List<Fact> facts = start.isBefore(input.since()) ? this.rows.facts(athlete, start) : input.facts();
		Timeline timeline = timeline(athlete, facts, trial);
		if (input.first() != null && timeline.firstDay().isBefore(input.first())) {
			return Course.of(timeline(athlete, this.rows.facts(athlete, LocalDate.EPOCH), trial), rules, to);
		}
		return Course.from(state, timeline, rules, to);
	}

	/** Up to an older state’s day lived anew, and on from there with what it hands on. */
	private static List<DayAssessment> fromTheFirstFact(@Nullable FirstState older, Timeline timeline, RuleBook rules,
			LocalDate to) {
		List<DayAssessment> anew = (older == null) ? List.of()
				: Course.withoutForecast(timeline, rules, older.day());
		return (older == null || anew.isEmpty()) ? Course.of(timeline, rules, to)
				: Course.from(older.goOn(anew.get(anew.size() - 1).state()), timeline, rules, to);
	}

	private static List<DayAssessment> from(@Nullable LocalDate first, List<DayAssessment> days) {
		return (first == null) ? days : days.stream().filter((day) -> !day.day().isBefore(first)).toList();
	}

	/** Known now: all facts as if each had been known on its day. */
	List<DayAssessment> knownNow(Athlete athlete, LocalDate to) {
		RuleBook rules = this.ruleSets.bookOf(athlete.teamId());
		return Course.of(everything(athlete).knownNow(), rules, to);
	}

	/** All facts of an athlete, as they became known. */
	Timeline everything(Athlete athlete) {
		return new Timeline(this.rows.facts(athlete, LocalDate.EPOCH), athlete.adultFrom());
	}

	private static Timeline timeline(Athlete athlete, List<Fact> facts, UnaryOperator<List<Fact>> trial) {
		return new Timeline(trial.apply(facts), athlete.adultFrom());
	}

}
