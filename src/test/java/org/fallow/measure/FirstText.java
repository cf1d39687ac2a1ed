package org.fallow.measure;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Statistics;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.RhrEvidence;
import org.jspecify.annotations.Nullable;

/**
 * The alarm of the first rule text, which the line replaced, on the deviations of today's
 * days: a tolerance that grows with the spread, <em>raised for action</em> and a
 * sustained rise (a one-sided CUSUM, NIST/SEMATECH 6.3.2.3). It decides nothing; it is
 * here so that both texts can be held beside each other on the same mornings. For
 * mornings of one series without a counted pulse and without an episode.
 */
final class FirstText {

	private static final double FLOOR = 3;

	private static final double CEILING = 8;

	private static final double SPREADS = 2;

	/** Days within which a second morning above the tolerance is looked for. */
	private static final int BEFORE = 2;

	private static final double CAP = 12;

	private static final double LIMIT = 8;

	private static final double LIMIT_SPREADS = 3;

	private static final double SUM_CAP = 1.5;

	/** Readings within band that end a signal, and silent mornings that empty the sum. */
	private static final int ENDS = 2;

	private static final int SILENT = 3;

	private final Deque<Past> past = new ArrayDeque<>();

	private double sum;

	private boolean signal;

	private boolean emptied;

	private int inBand;

	private FirstText() {
	}

	/**
	 * One morning.
	 *
	 * @param alarm raised for action, a sustained rise that stands, or High
	 * @param quiet whether a gate would have taken it as quiet
	 */
	record Morning(boolean alarm, boolean quiet) {
	}

	/** What the first text says of each of some days of a person, oldest first. */
	static List<Morning> of(List<DayAssessment> days) {
		FirstText text = new FirstText();
		List<Morning> all = new ArrayList<>(days.size());
		LocalDate before = null;
		for (DayAssessment day : days) {
			if (before != null && before.plusDays(SILENT).isBefore(day.day())) {
				text.fallSilent();
			}
			all.add(text.next(day.day(), day.rhr()));
			before = day.day();
		}
		return all;
	}

	private void fallSilent() {
		this.sum = 0;
		this.emptied = this.signal;
	}

	private Morning next(LocalDate day, RhrEvidence rhr) {
		Double dev = rhr.dev();
		Double spread = rhr.spread();
		RhrFlag flag = rhr.flag();
		if (dev == null || spread == null || flag == null) {
			return new Morning(false, false);
		}
		double tolerance = tolerance(spread);
		Past today = new Past(day, dev, tolerance);
		boolean raised = isRaised(today);
		boolean low = flag == RhrFlag.LOW;
		rise(dev, spread, dev <= tolerance && !low);
		boolean quiet = !flag.isHigh() && !low && (dev <= tolerance || isMedianQuiet(today));
		this.past.addLast(today);
		return new Morning(raised || this.signal || flag.isHigh(), quiet);
	}

	static double tolerance(double spread) {
		return Math.min(CEILING, Math.max(FLOOR, SPREADS * spread));
	}

	private boolean isRaised(Past today) {
		return today.dev() > today.tolerance() && (today.dev() > 2 * today.tolerance()
				|| before(today).stream().anyMatch((one) -> one.dev() > one.tolerance()));
	}

	private List<Past> before(Past today) {
		return this.past.stream().filter((one) -> !one.day().isBefore(today.day().minusDays(BEFORE))).toList();
	}

	private boolean isMedianQuiet(Past today) {
		List<Past> before = before(today);
		double[] last = new double[before.size() + 1];
		for (int i = 0; i < before.size(); i++) {
			last[i] = before.get(i).dev();
		}
		last[before.size()] = today.dev();
		return last.length > 1 && Statistics.median(last) <= today.tolerance();
	}

	private void rise(double dev, double spread, boolean within) {
		double limit = Math.max(LIMIT, LIMIT_SPREADS * spread);
		double slack = Math.max(FLOOR, spread);
		this.sum = Math.min(SUM_CAP * limit, Math.max(0, this.sum + Math.min(CAP, dev) - slack));
		if (!this.signal) {
			this.signal = this.sum >= limit;
			this.inBand = 0;
			return;
		}
		this.inBand = within ? this.inBand + 1 : 0;
		if (this.inBand >= (this.emptied ? 1 : ENDS)) {
			this.sum = 0;
			this.signal = false;
			this.emptied = false;
		}
	}

	private record Past(LocalDate day, double dev, double tolerance) {
	}

}
