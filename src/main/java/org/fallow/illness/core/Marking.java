package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.Line;
import org.fallow.baseline.RhrFlag;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.core.State.PastMark;
import org.jspecify.annotations.Nullable;

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
		boolean reported = fold.episode != null && fold.isReported(fold.day);
		if (fold.seen.isSick() || reported || high || fold.rhr.starts()) {
			return Mark.BAD;
		}
		boolean tracked = fold.episode != null && fold.episode.tracksNow();
		boolean good = (!tracked || isQuiet(fold)) && !fold.known.isSlip(fold.day);
		return good ? Mark.GOOD : Mark.NEITHER;
	}

	/** After a high first reading no morning is good, however the second one was. */
	static Mark afterMeasuringAgain(RhrEvidence rhr, Mark mark) {
		Repeat repeat = rhr.repeat();
		return (mark == Mark.GOOD && repeat != null && repeat.givesWay()) ? Mark.NEITHER : mark;
	}

	/**
	 * Marks as decided, but bad where a symptom of that morning, or a reading that is
	 * high or above the line, came in late.
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

	/**
	 * A reading today, not above the line, neither low nor high, and below what is quiet
	 * for this athlete.
	 */
	static boolean isQuiet(DayFold fold) {
		Double dev = fold.rhr.dev();
		Double below = quietBelow(fold);
		RhrFlag flag = fold.rhr.flag();
		return dev != null && below != null && flag != null && flag != RhrFlag.LOW && !flag.isHigh()
				&& fold.rhr.above() == null && dev < below;
	}

	/** The deviation a quiet morning is below, bpm; null without a baseline. */
	static @Nullable Double quietBelow(DayFold fold) {
		Line line = fold.rhr.line();
		Double spread = fold.rhr.spread();
		return (line == null || spread == null) ? null
				: Double.valueOf(Line.quietBelow(line.n(), spread, line.bpm(), fold.rules));
	}

}
