package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.Fact;
import org.fallow.entry.Recorded;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.fallow.rules.SlipRules;
import org.jspecify.annotations.Nullable;

/**
 * A slip that somebody wants to tell, with all that it is checked by.
 *
 * @param tick what was ticked
 * @param day the day whose entry or session it was
 * @param now the server's instant and the athlete's civil day
 * @param timeline all that is known, of mornings and sessions the last half year
 * @param before the day as decided from what was known before the tick; absent if nothing
 * was
 * @param without the day as decided if the slip worked; absent if nothing is left of it
 * @param book rule sets by the day they take effect
 * @param coached whether a coach with more than a deputy's post covers the athlete
 */
public record SlipCase(Tick tick, LocalDate day, Recorded now, Timeline timeline, @Nullable DayAssessment before,
		@Nullable DayAssessment without, RuleBook book, boolean coached) {

	/** The rules in effect today. */
	RuleSet rules() {
		return this.book.on(this.now.on()).rules();
	}

	SlipRules numbers() {
		return rules().slips();
	}

	/** Revisions of today's facts that carry the tick, in the order recorded. */
	List<Fact> carrying() {
		return this.timeline.facts()
			.stream()
			.filter((fact) -> fact.day().equals(this.now.on()) && this.tick.isOf(fact))
			.toList();
	}

	/** Whether an episode was open when the tick was made. */
	boolean wasInEpisode() {
		return this.before != null && this.before.state().episode() != null;
	}

	/** Slips told before, of red flags or of all else. */
	List<IllnessEvent.Slip> told(boolean redFlags) {
		return this.timeline.facts()
			.stream()
			.filter((fact) -> fact instanceof IllnessEvent.Slip slip && slip.terms().isOfARedFlag() == redFlags)
			.map((fact) -> (IllnessEvent.Slip) fact)
			.toList();
	}

	/** Whether a day is today or at most so many days before it. */
	boolean isWithin(LocalDate date, int days) {
		return !date.isAfter(this.now.on()) && !date.isBefore(this.now.on().minusDays(days));
	}

}
