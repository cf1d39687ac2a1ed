package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.jspecify.annotations.Nullable;

/**
 * What slips do. Each was checked when it was recorded and is trusted here: its day is
 * decided as if no revision before it carried the tick. Both facts stay; what is ticked
 * again after it counts.
 */
final class Slips {

	private Slips() {
	}

	/**
	 * The facts as days are decided from them.
	 * @param facts in the order recorded
	 * @return the same facts in the same order, without the ticks that were slips
	 */
	static List<Fact> takenOff(List<Fact> facts) {
		List<Fact> decided = facts;
		for (int i = 0; i < facts.size(); i++) {
			if (facts.get(i) instanceof IllnessEvent.Slip slip && works(slip, facts)) {
				decided = (decided == facts) ? new ArrayList<>(facts) : decided;
				for (int j = 0; j < i; j++) {
					Fact fact = decided.get(j);
					boolean before = fact.recorded().compareTo(slip.recorded()) < 0;
					if (before && fact.day().equals(slip.day()) && slip.tick().isOf(fact)) {
						decided.set(j, slip.tick().takenOff(fact));
					}
				}
			}
		}
		return decided;
	}

	/** Whether a slip works: at once, or accepted by a coach on its day. */
	static boolean works(IllnessEvent.Slip slip, List<? extends Fact> facts) {
		if (slip.terms() != SlipTerms.IF_ACCEPTED) {
			return true;
		}
		for (Fact fact : facts) {
			if (fact instanceof IllnessEvent.SlipAccepted accepted
					&& accepted.recorded().on().equals(slip.recorded().on())
					&& accepted.recorded().compareTo(slip.recorded()) >= 0) {
				return true;
			}
		}
		return false;
	}

	/** The slip of a day that works, the last one told; null if there is none. */
	static IllnessEvent.@Nullable Slip of(Known known, LocalDate day) {
		IllnessEvent.Slip last = null;
		for (IllnessEvent.Slip slip : known.events(IllnessEvent.Slip.class)) {
			if (slip.day().equals(day) && works(slip, known.events())) {
				last = slip;
			}
		}
		return last;
	}

	/**
	 * The red-flag slip nobody has asked about yet, the last one told; null if there is
	 * none.
	 */
	static @Nullable Unasked unasked(DayFold fold) {
		IllnessEvent.CarriedSlip carried = carried(fold.known);
		if (carried != null) {
			return new Unasked(carried.day(), true);
		}
		IllnessEvent.Slip last = null;
		for (IllnessEvent.Slip slip : fold.known.events(IllnessEvent.Slip.class)) {
			if (slip.terms().isOfARedFlag() && !isAsked(slip.recorded(), fold.known)) {
				last = slip;
			}
		}
		return (last == null || hasEntries(last, fold)) ? null
				: new Unasked(last.day(), last.terms() == SlipTerms.UNTIL_ASKED);
	}

	/** One of another entry of the person, which only a coach's note ends. */
	private static IllnessEvent.@Nullable CarriedSlip carried(Known known) {
		IllnessEvent.CarriedSlip last = null;
		for (IllnessEvent.CarriedSlip slip : known.events(IllnessEvent.CarriedSlip.class)) {
			last = isAsked(slip.recorded(), known) ? last : slip;
		}
		return last;
	}

	private static boolean isAsked(Recorded told, Known known) {
		for (IllnessEvent.Asked asked : known.events(IllnessEvent.Asked.class)) {
			if (asked.recorded().compareTo(told) > 0) {
				return true;
			}
		}
		return false;
	}

	/**
	 * Whether enough mornings were entered after a slip that no coach was there for; the
	 * one of today does not count yet (the safer reading).
	 */
	private static boolean hasEntries(IllnessEvent.Slip slip, DayFold fold) {
		Integer entered = fold.before.slipEntries();
		return slip.terms() == SlipTerms.UNTIL_ENTRIES && slip.day().isBefore(fold.day) && entered != null
				&& entered >= fold.rules.slips().entries();
	}

	/**
	 * Mornings entered on their own day and without a red flag since such a slip, today's
	 * among them; null before the first.
	 */
	static @Nullable Integer entries(DayFold fold) {
		for (IllnessEvent.Slip slip : fold.known.events(IllnessEvent.Slip.class)) {
			if (slip.terms() == SlipTerms.UNTIL_ENTRIES && slip.day().equals(fold.day)) {
				return 0;
			}
		}
		Integer before = fold.before.slipEntries();
		Morning today = fold.known.morningOn(fold.day);
		boolean counts = today != null && today.revisions().stream().noneMatch(MorningEntry::hasRedFlag);
		return (before == null) ? null : Math.min(fold.rules.slips().entries(), before + (counts ? 1 : 0));
	}

	/**
	 * A slip nobody has asked about.
	 *
	 * @param day its day
	 * @param byCoach whether a coach's note ends that, and not entries
	 */
	record Unasked(LocalDate day, boolean byCoach) {
	}

}
