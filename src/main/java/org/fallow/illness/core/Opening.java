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

	/**
	 * How far back of the known onset a late row is followed. A replay has read that far,
	 * and more than ten days are the long path anyhow.
	 */
	private static final int ROW_REACHES_DAYS = 60;

	private Opening() {
	}

	/** The onset of an episode that opens today; null if none does. */
	static @Nullable LocalDate onset(DayFold fold) {
		List<Fact> fresh = (fold.withdrawnAt == null) ? fold.known.fresh()
				: fold.known.fresh().stream().filter((fact) -> isAfterWithdrawal(fold, fact)).toList();
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
			boolean opens = fact instanceof IllnessEvent.Report || fold.opensHold(fact)
					|| (fact instanceof MorningEntry entry && fold.sickness(entry).opens());
			if (opens && !fact.day().isAfter(fold.day)) {
				earliest = earliest(earliest, fact.day());
			}
		}
		return earliest;
	}

	/**
	 * First of enough entered mornings running with symptoms above the neck, one of which
	 * was recorded today.
	 */
	private static @Nullable LocalDate coldRun(DayFold fold) {
		int needed = fold.rules.opening().coldMornings();
		List<Morning> entered = recent(fold);
		for (int i = 0; i + needed <= entered.size(); i++) {
			List<Morning> run = entered.subList(i, i + needed);
			if (isColdRun(fold, run)) {
				return run.get(0).day();
			}
		}
		return null;
	}

	private static List<Morning> recent(DayFold fold) {
		LocalDate first = null;
		for (MorningEntry entry : fold.known.fresh(MorningEntry.class)) {
			first = earliest(first, entry.day());
		}
		LocalDate from = (first == null) ? fold.day : first;
		return fold.known.mornings(from.minusDays(fold.rules.opening().coldWithinDays()), fold.day.plusDays(1));
	}

	private static boolean isColdRun(DayFold fold, List<Morning> run) {
		for (Morning morning : run) {
			if (!isCold(fold, morning)) {
				return false;
			}
		}
		LocalDate first = run.get(0).day();
		LocalDate last = run.get(run.size() - 1).day();
		boolean within = last.toEpochDay() - first.toEpochDay() < fold.rules.opening().coldWithinDays();
		boolean fresh = run.stream()
			.flatMap((morning) -> morning.revisions().stream())
			.anyMatch((entry) -> entry.recorded().on().equals(fold.day));
		return within && fresh;
	}

	private static boolean isCold(DayFold fold, Morning morning) {
		for (MorningEntry entry : morning.revisions()) {
			if (fold.sickness(entry).aboveTheNeck() && isAfterWithdrawal(fold, entry)) {
				return true;
			}
		}
		return false;
	}

	/**
	 * An onset before the one known so far, from what was recorded today: a sick morning
	 * or report after the last close, or a cold morning that runs on into the first one.
	 */
	static @Nullable LocalDate earlierOnset(DayFold fold, LocalDate onset) {
		List<Fact> fresh = fold.known.fresh().stream().filter((fact) -> fold.isAfterClose(fact.day())).toList();
		LocalDate earliest = earliestSick(fold, fresh);
		LocalDate running = coldRowInto(fold, onset);
		boolean late = running != null
				&& fold.known.fresh(MorningEntry.class).stream().anyMatch((entry) -> entry.day().isBefore(onset));
		return late ? earliest(earliest, running) : earliest;
	}

	/**
	 * First of the cold mornings that run on into a day, each less than the days of a run
	 * from the next; null if there is none.
	 */
	private static @Nullable LocalDate coldRowInto(DayFold fold, LocalDate onset) {
		int within = fold.rules.opening().coldWithinDays();
		LocalDate oldest = onset.minusDays(ROW_REACHES_DAYS);
		LocalDate running = onset;
		for (Morning morning : fold.known.backFrom(onset.minusDays(1))) {
			LocalDate day = morning.day();
			if (day.isBefore(oldest) || !fold.isAfterClose(day) || !day.plusDays(within).isAfter(running)
					|| !isCold(fold, morning)) {
				break;
			}
			running = day;
		}
		return running.equals(onset) ? null : running;
	}

	private static @Nullable LocalDate earliest(@Nullable LocalDate one, @Nullable LocalDate other) {
		if (one == null || other == null) {
			return (one == null) ? other : one;
		}
		return one.isBefore(other) ? one : other;
	}

}
