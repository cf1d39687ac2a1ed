package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.entry.MorningEntry;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Mornings without an entry, and what is still to be told about them. As long as it is
 * not told whether the athlete was ill meanwhile, or a report that was promised so is
 * owed, no gate opens.
 *
 * @param last latest morning with an entry, before or on the day; absent before the first
 * @param askedFrom first of the silent mornings that are asked about; absent when nothing
 * is asked
 * @param owedSince the day somebody answered to have been ill meanwhile and has not told
 * more since; absent when nothing is owed
 */
public record Silence(@Nullable LocalDate last, @Nullable LocalDate askedFrom, @Nullable LocalDate owedSince) {

	static final Silence NONE = new Silence(null, null, null);

	static Silence of(DayFold fold) {
		Silence told = fold.before.silence();
		Silence before = (told == null) ? NONE : told;
		LocalDate last = before.lastBefore(fold);
		LocalDate asked = before.asked(fold, last);
		LocalDate owed = fold.withdrawnToday ? null : before.owed(fold);
		return new Silence((fold.entry == null) ? last : fold.day, asked, isCarried(fold) ? fold.day : owed);
	}

	private @Nullable LocalDate lastBefore(DayFold fold) {
		for (Morning morning : fold.known.backFrom(fold.day.minusDays(1))) {
			return (this.last == null || morning.day().isAfter(this.last)) ? morning.day() : this.last;
		}
		return this.last;
	}

	private @Nullable LocalDate asked(DayFold fold, @Nullable LocalDate lastBefore) {
		for (MorningEntry fresh : fold.known.fresh(MorningEntry.class)) {
			if (fresh.meanwhile() != null) {
				return null;
			}
		}
		if (this.askedFrom != null) {
			return isSilent(fold, this.askedFrom) ? this.askedFrom : null;
		}
		boolean silent = fold.entry != null && lastBefore != null && isLong(lastBefore, fold.day, fold.rules);
		return (silent && lastBefore != null) ? lastBefore.plusDays(1) : null;
	}

	/** Whether the mornings were not filled in since. */
	private static boolean isSilent(DayFold fold, LocalDate from) {
		LocalDate before = from.minusDays(1);
		for (Morning morning : fold.known.mornings(from, fold.day.plusDays(1))) {
			if (isLong(before, morning.day(), fold.rules)) {
				return true;
			}
			before = morning.day();
		}
		return isLong(before, fold.day, fold.rules);
	}

	private static boolean isLong(LocalDate entered, LocalDate next, RuleSet rules) {
		return next.toEpochDay() - entered.toEpochDay() > rules.told().silentMornings();
	}

	/** Whether another entry of the person owes a report from this day on. */
	private static boolean isCarried(DayFold fold) {
		for (IllnessEvent.CarriedReport carried : fold.known.fresh(IllnessEvent.CarriedReport.class)) {
			boolean told = fold.withdrawnToday && fold.withdrawnAt != null
					&& fold.withdrawnAt.isAfter(carried.recorded().at());
			for (IllnessEvent.Report report : fold.known.fresh(IllnessEvent.Report.class)) {
				told |= !fold.known.isPromised(report) && report.recorded().compareTo(carried.recorded()) > 0;
			}
			if (!told) {
				return true;
			}
		}
		return false;
	}

	private @Nullable LocalDate owed(DayFold fold) {
		LocalDate owed = this.owedSince;
		for (IllnessEvent.Report report : fold.known.fresh(IllnessEvent.Report.class)) {
			owed = fold.known.isPromised(report) ? fold.day : null;
		}
		return owed;
	}

	/**
	 * First of the silent mornings before an entry that no entry has answered for yet.
	 * @return the entry's own day where there are none
	 */
	static LocalDate firstBefore(MorningEntry entry, Known known, RuleSet rules) {
		LocalDate first = entry.day();
		LocalDate next = entry.day();
		for (Morning morning : known.backFrom(entry.day().minusDays(1))) {
			first = isLong(morning.day(), next, rules) ? morning.day().plusDays(1) : first;
			next = morning.day();
			if (morning.effective().meanwhile() != null) {
				break;
			}
		}
		return first;
	}

	/** Whether nothing is left to be told. */
	boolean isTold() {
		return this.askedFrom == null && this.owedSince == null;
	}

}
