package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.entry.Fact;
import org.fallow.entry.Recorded;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * What people said or decided about an illness.
 */
public sealed interface IllnessEvent extends Fact {

	/**
	 * An athlete, or a coach for them, reports being ill.
	 *
	 * @param day the onset
	 * @param recorded when it became known
	 * @param kind what kind of illness
	 * @param worst worst severity so far, 0 to 10; absent when not stated
	 * @param note the reporter's words
	 */
	record Report(LocalDate day, Recorded recorded, ReportKind kind, @Nullable Integer worst,
			@Nullable String note) implements IllnessEvent {
	}

	/**
	 * A hold set by hand: a clinician first.
	 *
	 * @param day the day it speaks of
	 * @param recorded when it opened
	 * @param reason why
	 */
	record Hold(LocalDate day, Recorded recorded, String reason) implements IllnessEvent {
	}

	/**
	 * A clinician's clearance; it ends the holds recorded before it while it covers the
	 * day, and caps the clearance.
	 *
	 * @param day first day it covers, never before it was recorded
	 * @param until last day it covers, inclusive; absent when open
	 * @param recorded when it was recorded
	 * @param ceiling the most the clinician allows: REST, EASY_ONLY or FULL_TRAINING
	 * @param who the clinician's name
	 * @param role the clinician's role
	 * @param note the clinician's words
	 */
	record Cleared(LocalDate day, @Nullable LocalDate until, Recorded recorded, Clearance ceiling, String who,
			String role, @Nullable String note) implements IllnessEvent {

		/**
		 * Refuses a clearance that is back-dated, ends before it begins or has no ceiling
		 * that a clinician can give.
		 */
		public Cleared {
			if (day.isBefore(recorded.on())) {
				throw new IllegalArgumentException("a clearance cannot be back-dated");
			}
			if (until != null && until.isBefore(day)) {
				throw new IllegalArgumentException("a clearance cannot end before it begins");
			}
			if (ceiling == Clearance.REFER || ceiling == Clearance.NOT_ASSESSED) {
				throw new IllegalArgumentException("a clearance is for rest, easy running or full training");
			}
		}

		boolean covers(LocalDate date) {
			return !date.isBefore(this.day) && (this.until == null || !date.isAfter(this.until));
		}

	}

	/**
	 * A coach withdraws an episode that was none.
	 *
	 * @param day the day of the withdrawal
	 * @param recorded when it was recorded
	 * @param reason why
	 */
	record Withdrawal(LocalDate day, Recorded recorded, String reason) implements IllnessEvent {
	}

	/**
	 * A coach is stricter than the rules.
	 *
	 * @param day first day
	 * @param until last day, inclusive
	 * @param recorded when it was recorded
	 * @param ceiling the most the coach allows
	 * @param reason why
	 */
	record Stricter(LocalDate day, LocalDate until, Recorded recorded, Clearance ceiling,
			String reason) implements IllnessEvent {

		boolean covers(LocalDate date) {
			return !date.isBefore(this.day) && !date.isAfter(this.until);
		}

	}

	/**
	 * A coach lets an episode go on by symptoms alone, because method or medicine
	 * changed.
	 *
	 * @param day the day from which it holds
	 * @param recorded when it was recorded
	 * @param reason why
	 */
	record SymptomsOnly(LocalDate day, Recorded recorded, String reason) implements IllnessEvent {
	}

	/**
	 * A coach sets a working level, on a clinician's word. It works from the next morning
	 * on, and only if nothing spoke against it on this day.
	 *
	 * @param day the day it was set
	 * @param recorded when it was recorded
	 * @param who the clinician's name
	 * @param role the clinician's role
	 * @param word what the clinician said
	 * @param reason the coach's reason
	 */
	record WorkingLevel(LocalDate day, Recorded recorded, String who, String role, String word,
			String reason) implements IllnessEvent {
	}

	/**
	 * An episode that stood in one of two entries of a person when they were made one, or
	 * in their union when that was undone. From its day on the own episode is no looser
	 * than this one, until the usual gates open; it is never entered by anybody.
	 *
	 * @param day the day from which it counts
	 * @param recorded when the entries were made one, or parted
	 * @param episode the episode as that day left it
	 */
	record Carried(LocalDate day, Recorded recorded, Episode episode) implements IllnessEvent {
	}

}
