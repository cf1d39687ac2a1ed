package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.Deviation;
import org.fallow.baseline.Line;
import org.fallow.baseline.Series;
import org.fallow.illness.core.State.PastDeviation;
import org.fallow.rules.RuleSet;

/**
 * When a morning is above the line: the condition of a start, judged every morning. It is
 * an alarm that asks a question; it proves nothing.
 */
final class AboveTheLine {

	private AboveTheLine() {
	}

	/**
	 * Whether a morning alone, or with the reading before, is above its own line.
	 * @param today the morning's deviation
	 * @param series its series
	 * @param past earlier deviations, oldest first
	 * @param day the morning
	 * @param rules line numbers
	 * @return true also for every high one
	 */
	static boolean starts(Deviation today, Series series, List<PastDeviation> past, LocalDate day, RuleSet.Line rules) {
		if (today.flag().isHigh() || Line.isFarAbove(today.dev(), today.line(), rules)) {
			return true;
		}
		for (PastDeviation before : readingsBefore(series, past, day, rules)) {
			if (Line.isPair(today.dev(), before.dev(), today.line(), rules)) {
				return true;
			}
		}
		return false;
	}

	/**
	 * The reading before: the latest entered in time, and with it every later one that
	 * came in late, for a late reading may help to start and never comes between.
	 */
	private static List<PastDeviation> readingsBefore(Series series, List<PastDeviation> past, LocalDate day,
			RuleSet.Line rules) {
		List<PastDeviation> found = new ArrayList<>(2);
		for (int i = past.size() - 1; i >= 0; i--) {
			PastDeviation one = past.get(i);
			long apart = day.toEpochDay() - one.day().toEpochDay();
			if (apart > 0 && apart <= rules.apartDays() && one.series().equals(series)) {
				found.add(one);
				if (!one.late()) {
					break;
				}
			}
		}
		return found;
	}

}
