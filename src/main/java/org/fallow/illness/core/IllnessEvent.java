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
	 * @param word whose word it is, and what it says besides
	 */
	record Cleared(LocalDate day, @Nullable LocalDate until, Recorded recorded, Clearance ceiling, String who,
			String role, @Nullable String note, ClinicianWord word) implements IllnessEvent {

		/**
		 * Refuses a clearance that is back-dated, ends before it begins or has no ceiling
		 * that a clinician can give; <em>no illness</em> other than with full training
		 * and without a last day; an examination of a later day; and what is told by the
		 * athlete beyond easy running or the days that any rule set allows.
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
			if (word.noIllness() && (ceiling != Clearance.FULL_TRAINING || until != null)) {
				throw new IllegalArgumentException("no illness means full training without a last day");
			}
			if (word.examinedOn() != null && word.examinedOn().isAfter(recorded.on())) {
				throw new IllegalArgumentException("an examination cannot be of a later day");
			}
			if (word.by() == ClinicianWord.By.ATHLETE && (ceiling == Clearance.FULL_TRAINING || until == null
					|| until.isAfter(day.plusDays(ClinicianWord.MOST_TOLD_DAYS - 1L)))) {
				throw new IllegalArgumentException("told by the athlete is easy running at most, for "
						+ ClinicianWord.MOST_TOLD_DAYS + " days at most");
			}
		}

		/**
		 * A clinician's clearance that says nothing besides its ceiling.
		 * @param day first day it covers
		 * @param until last day it covers, inclusive; absent when open
		 * @param recorded when it was recorded
		 * @param ceiling the most the clinician allows
		 * @param who the clinician's name
		 * @param role the clinician's role
		 * @param note the clinician's words
		 */
		public Cleared(LocalDate day, @Nullable LocalDate until, Recorded recorded, Clearance ceiling, String who,
				String role, @Nullable String note) {
			this(day, until, recorded, ceiling, who, role, note, ClinicianWord.PLAIN);
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
	 * @param key names it among the athlete's ceilings
	 * @param word the clinician's or guardian's word it names; absent where it is the
	 * coach's own
	 */
	record Stricter(LocalDate day, LocalDate until, Recorded recorded, Clearance ceiling, String reason, String key,
			@Nullable Spoken word) implements IllnessEvent {

		/**
		 * A coach's own ceiling, named by the moment it was recorded.
		 * @param day first day
		 * @param until last day, inclusive
		 * @param recorded when it was recorded
		 * @param ceiling the most the coach allows
		 * @param reason why
		 */
		public Stricter(LocalDate day, LocalDate until, Recorded recorded, Clearance ceiling, String reason) {
			this(day, until, recorded, ceiling, reason, recorded.at().toString(), null);
		}

		boolean covers(LocalDate date) {
			return !date.isBefore(this.day) && !date.isAfter(this.until);
		}

	}

	/**
	 * A coach lifts one ceiling, from now on.
	 *
	 * @param day the day it was lifted
	 * @param recorded when it was recorded
	 * @param key the ceiling's key
	 * @param reason why
	 * @param word the clinician's or guardian's word it names; absent where it is the
	 * coach's own
	 */
	record Lifted(LocalDate day, Recorded recorded, String key, String reason,
			@Nullable Spoken word) implements IllnessEvent {

		/**
		 * Whether it lifts a ceiling: what names a clinician's word is lifted by a
		 * clinician's only, and a guardian's by a guardian's (the safer reading).
		 * @param ceiling a coach's ceiling
		 * @return true if it no longer holds
		 */
		public boolean lifts(Stricter ceiling) {
			Spoken needed = ceiling.word();
			return this.key.equals(ceiling.key()) && !this.recorded.at().isBefore(ceiling.recorded().at())
					&& (needed == null || (this.word != null && this.word.by() == needed.by()));
		}

	}

	/**
	 * A coach's word that the athlete said so today. It counts for adults, on its own day
	 * and where the morning's entry does not say.
	 *
	 * @param day the day it was said
	 * @param recorded when it was recorded
	 * @param able whether the athlete said to feel able to train
	 * @param eating whether the athlete said to eat and drink normally
	 * @param reason how the coach knows
	 */
	record SaidToday(LocalDate day, Recorded recorded, boolean able, boolean eating,
			String reason) implements IllnessEvent {
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
	 * An athlete says that a tick of today was a slip of the finger: checked by
	 * {@link SlipCheck} when it is recorded, trusted by the fold.
	 *
	 * @param day the day whose tick it was, that of the recording
	 * @param recorded when it was recorded
	 * @param tick what was ticked
	 * @param terms what it works under
	 */
	record Slip(LocalDate day, Recorded recorded, Tick tick, SlipTerms terms) implements IllnessEvent {

		/**
		 * Refuses a slip of another day's tick.
		 */
		public Slip {
			if (!day.equals(recorded.on())) {
				throw new IllegalArgumentException("a slip is of the day it is recorded on");
			}
		}

	}

	/**
	 * A coach accepts the slip that an athlete told today in an open episode; it works on
	 * the day it is recorded only.
	 *
	 * @param day the day of the slip
	 * @param recorded when it was recorded
	 * @param reason why
	 */
	record SlipAccepted(LocalDate day, Recorded recorded, String reason) implements IllnessEvent {
	}

	/**
	 * A covering coach notes having asked the athlete about the red flags that were told
	 * to be slips before.
	 *
	 * @param day the day of the note
	 * @param recorded when it was recorded
	 * @param words what the athlete said
	 */
	record Asked(LocalDate day, Recorded recorded, String words) implements IllnessEvent {
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

	/**
	 * A slip of a red flag that nobody had asked about in one of two entries of a person
	 * when they were made one: a coach's note ends that, whatever is entered; it is never
	 * entered by anybody.
	 *
	 * @param day the day of the slip
	 * @param recorded when the entries were made one
	 */
	record CarriedSlip(LocalDate day, Recorded recorded) implements IllnessEvent {
	}

	/**
	 * A report of illness that was promised and still owed in one of two entries of a
	 * person when they were made one; it is never entered by anybody.
	 *
	 * @param day the day from which it counts
	 * @param recorded when the entries were made one
	 */
	record CarriedReport(LocalDate day, Recorded recorded) implements IllnessEvent {
	}

}
