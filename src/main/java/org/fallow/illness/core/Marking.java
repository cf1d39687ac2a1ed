package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Statistics;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.core.State.PastDeviation;
import org.fallow.illness.core.State.PastMark;

/**
 * What a morning is for the return: good, bad or neither.
 */
final class Marking {

	private static final int PAST_MORNINGS = 2;

	private Marking() {
	}

	static Mark of(DayFold fold) {
		MorningEntry morning = fold.entry;
		if (morning == null) {
			return Mark.NONE;
		}
		RhrFlag flag = fold.rhr.flag();
		RhrFlag kept = fold.rhr.keptFlag();
		boolean high = (flag != null && flag.isHigh()) || (kept != null && kept.isHigh());
		boolean raised = fold.rhr.raisedForAction() || fold.rhr.keptRaised();
		boolean reported = fold.episode != null && fold.isReported(fold.day);
		if (fold.sickness(morning).isSick() || reported || high || raised) {
			return Mark.BAD;
		}
		boolean tracked = fold.episode != null && fold.episode.tracksNow();
		boolean good = (!tracked || isQuiet(fold)) && !fold.known.isSlip(fold.day);
		return good ? Mark.GOOD : Mark.NEITHER;
	}

	/**
	 * Marks as decided, but bad where a symptom of that morning, or a reading that is
	 * high or raised for action, came in late.
	 */
	static List<PastMark> past(DayFold fold, Numbers numbers) {
		List<PastMark> result = new ArrayList<>(PAST_MORNINGS + 1);
		if (!fold.known.hasLate(fold.day)) {
			for (PastMark past : fold.before.marks()) {
				if (fold.day.toEpochDay() - past.day().toEpochDay() <= PAST_MORNINGS) {
					result.add(past);
				}
			}
			return result;
		}
		for (int back = PAST_MORNINGS; back > 0; back--) {
			LocalDate date = fold.day.minusDays(back);
			MorningEntry morning = fold.known.morning(date);
			boolean late = fold.known.isFresh(date);
			if (late && morning != null
					&& (fold.sickness(morning).isSick() || numbers.isBad(date, fold.rhr.before()))) {
				result.add(new PastMark(date, Mark.BAD));
			}
			else {
				for (PastMark past : fold.before.marks()) {
					if (past.day().equals(date)) {
						result.add(past);
					}
				}
			}
		}
		return result;
	}

	/** A reading today, neither low nor high, within T by itself or by the median. */
	static boolean isQuiet(DayFold fold) {
		Double dev = fold.rhr.dev();
		Double tolerance = fold.rhr.tolerance();
		RhrFlag flag = fold.rhr.flag();
		if (dev == null || tolerance == null || flag == null || flag == RhrFlag.LOW || flag.isHigh()) {
			return false;
		}
		if (dev <= tolerance) {
			return true;
		}
		LocalDate from = fold.day.minusDays(fold.rules.gates().quietMornings() - 1L);
		List<Double> last = new ArrayList<>(
				fold.rhr.before().stream().filter((d) -> !d.day().isBefore(from)).map(PastDeviation::dev).toList());
		last.add(dev);
		return last.size() >= fold.rules.gates().quietLeast()
				&& Statistics.median(last.stream().mapToDouble(Double::doubleValue).toArray()) <= tolerance;
	}

}
