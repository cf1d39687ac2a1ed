package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.Fact;
import org.fallow.rules.RuleBook;

/**
 * The fold: from an athlete's facts to one assessment for each day, <em>known then</em>.
 * Each day is decided with the facts recorded by its end; what was decided stays decided.
 */
public final class Course {

	private Course() {
	}

	/**
	 * Lives day by day from the first fact on.
	 * @param timeline all facts
	 * @param rules rule sets by the day they take effect
	 * @param to last day, inclusive
	 * @return one assessment for each day from the first fact's to {@code to}
	 */
	public static List<DayAssessment> of(Timeline timeline, RuleBook rules, LocalDate to) {
		LocalDate first = timeline.firstDay();
		return first.isAfter(to) ? List.of() : from(State.before(first), timeline, rules, to);
	}

	/**
	 * The day of an athlete of whom nothing is known.
	 * @param rules rule sets by the day they take effect
	 * @param day the day
	 * @return not assessed
	 */
	public static DayAssessment nothing(RuleBook rules, LocalDate day) {
		return from(State.before(day), new Timeline(List.of()), rules, day).get(0);
	}

	/**
	 * Goes on from a day that was already decided.
	 * @param state the state after that day
	 * @param timeline the facts; of mornings and sessions, those from
	 * {@link State#factsFrom} on, of everything else all
	 * @param rules rule sets by the day they take effect
	 * @param to last day, inclusive
	 * @return one assessment for each day after the state's day
	 */
	public static List<DayAssessment> from(State state, Timeline timeline, RuleBook rules, LocalDate to) {
		return live(state, timeline, rules, to, true);
	}

	/**
	 * The same decisions as {@link #of}, without the earliest days of criteria and gates,
	 * which take most of the time.
	 * @param timeline all facts
	 * @param rules rule sets by the day they take effect
	 * @param to last day, inclusive
	 * @return one assessment for each day from the first fact's to {@code to}
	 */
	public static List<DayAssessment> withoutForecast(Timeline timeline, RuleBook rules, LocalDate to) {
		LocalDate first = timeline.firstDay();
		return first.isAfter(to) ? List.of() : withoutForecast(State.before(first), timeline, rules, to);
	}

	/**
	 * The same decisions as {@link #from}, without earliest days.
	 * @param state the state after a day that was already decided
	 * @param timeline the facts, as there
	 * @param rules rule sets by the day they take effect
	 * @param to last day, inclusive
	 * @return one assessment for each day after the state's day
	 */
	public static List<DayAssessment> withoutForecast(State state, Timeline timeline, RuleBook rules, LocalDate to) {
		return live(state, timeline, rules, to, false);
	}

	private static List<DayAssessment> live(State state, Timeline timeline, RuleBook rules, LocalDate to,
			boolean forecast) {
		Known known = new Known(timeline.adultFrom(), rules);
		int next = 0;
		List<Fact> facts = Slips.takenOff(timeline.facts());
		while (next < facts.size() && !facts.get(next).recorded().on().isAfter(state.day())) {
			known.add(facts.get(next++));
		}
		List<DayAssessment> days = new ArrayList<>();
		State before = state;
		for (LocalDate day = state.day().plusDays(1); !day.isAfter(to); day = day.plusDays(1)) {
			known.newDay();
			while (next < facts.size() && !facts.get(next).recorded().on().isAfter(day)) {
				known.add(facts.get(next++));
			}
			DayAssessment assessment = new DayFold(before, known, rules, day).decide(rules, forecast);
			days.add(assessment);
			before = assessment.state();
		}
		return days;
	}

}
