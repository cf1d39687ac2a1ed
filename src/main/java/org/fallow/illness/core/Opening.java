package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.jspecify.annotations.Nullable;

/**
 * What opens an episode. Every revision of a morning that was recorded today is looked
 * at: an athlete's correction does not undo an opening, only a coach withdraws it (the
 * safer reading).
 */
final class Opening {

	private Opening() {
	}

	/** The onset of an episode that opens today; null if none does. */
	static @Nullable LocalDate onset(DayFold fold) {
		List<Fact> fresh = fold.known.fresh().stream().filter((fact) -> isAfterWithdrawal(fold, fact)).toList();
		LocalDate onset = earliest(earliestSick(fold, fresh), coldRun(fold));
		if (onset == null && !fold.standing.isEmpty()) {
			return fold.day;
		}
		return onset;
	}

	private static boolean isAfterWithdrawal(DayFold fold, Fact fact) {
		Instant withdrawn = fold.withdrawnAt;
		return withdrawn == null || fact.recorded().at().isAfter(withdrawn);
	}

	/** The earliest day among facts that open an episode by themselves. */
	static @Nullable LocalDate earliestSick(DayFold fold, List<Fact> facts) {
		LocalDate earliest = null;
		for (Fact fact : facts) {
			boolean opens = fact instanceof IllnessEvent.Report || Holds.openedBy(fact) != null
					|| (fact instanceof MorningEntry entry && fold.sickness(entry).opens());
			if (opens && !fact.day().isAfter(fold.day)) {
				earliest = earliest(earliest, fact.day());
			}
		}
		return earliest;
	}

	/**
	 * First of the latest entered mornings running with symptoms above the neck, if these
	 * are enough and one of them was recorded today.
	 */
	private static @Nullable LocalDate coldRun(DayFold fold) {
		int needed = fold.rules.opening().coldMornings();
		List<MorningEntry> latest = fold.known.backFrom(fold.day)
			.values()
			.stream()
			.limit(needed)
			.map(Morning::effective)
			.toList();
		if (latest.size() < needed || latest.stream().noneMatch((e) -> e.recorded().on().equals(fold.day))) {
			return null;
		}
		LocalDate first = latest.get(needed - 1).day();
		boolean within = fold.day.toEpochDay() - first.toEpochDay() < fold.rules.opening().coldWithinDays();
		boolean all = latest.stream().allMatch((e) -> fold.sickness(e).aboveTheNeck() && isAfterWithdrawal(fold, e));
		return (within && all) ? first : null;
	}

	private static @Nullable LocalDate earliest(@Nullable LocalDate one, @Nullable LocalDate other) {
		if (one == null || other == null) {
			return (one == null) ? other : one;
		}
		return one.isBefore(other) ? one : other;
	}

}
