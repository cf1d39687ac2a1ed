package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.Column;
import org.fallow.baseline.HrvBaseline;
import org.fallow.baseline.RhrBaseline;
import org.fallow.baseline.Series;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.core.Readings.Kind;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Readings by the windows the rules ask for, from what is known.
 *
 * @param known the facts
 * @param out days that never enter a baseline
 * @param rules the numbers
 */
record Windows(Known known, List<DayRange> out, RuleSet rules) {

	/** Readings older than this say nothing about the series in use. */
	private static final int LOOK_BACK_DAYS = 120;

	/** The series of an entry's measurement; null without one. */
	@Nullable Series series(MorningEntry entry) {
		return this.known.readings().series(entry);
	}

	/** Series of the latest resting heart rate up to a day; null if there is none. */
	@Nullable Series latestRhrSeries(LocalDate day) {
		return latestSeries(day, Kind.RHR);
	}

	/** Series of the latest RMSSD up to a day; null if there is none. */
	@Nullable Series latestHrvSeries(LocalDate day) {
		return latestSeries(day, Kind.LN_RMSSD);
	}

	/** Day of the latest resting heart rate up to a day; null if there is none. */
	@Nullable LocalDate latestRhrDay(LocalDate day) {
		Morning latest = latest(day, Kind.RHR);
		return (latest == null) ? null : latest.day();
	}

	private @Nullable Series latestSeries(LocalDate day, Kind kind) {
		Morning latest = latest(day, kind);
		return (latest == null) ? null : series(latest.effective());
	}

	private @Nullable Morning latest(LocalDate day, Kind kind) {
		List<Morning> last = this.known.lastMornings(LOOK_BACK_DAYS + 1, day);
		for (int i = last.size() - 1; i >= 0; i--) {
			if (kind.of(last.get(i)) != null) {
				return last.get(i);
			}
		}
		return null;
	}

	/** Baseline of a day from the readings before it, held ones apart. */
	@Nullable RhrBaseline rhrBaseline(LocalDate day, @Nullable Series series) {
		return (series == null) ? null : column(Kind.RHR, series).rhrBaseline((int) day.toEpochDay());
	}

	/** Whether any series has a baseline of a day, held ones apart. */
	boolean hasRhrBaseline(LocalDate day) {
		return this.known.readings().hasRhrBaseline((int) day.toEpochDay(), this.out, this.rules);
	}

	/** How many resting heart rates the baseline of a day rests on, or would. */
	int rhrReadings(LocalDate day, Series series) {
		return column(Kind.RHR, series).readings((int) day.toEpochDay());
	}

	@Nullable HrvBaseline hrvBaseline(LocalDate day, @Nullable Series series) {
		return (series == null) ? null : column(Kind.LN_RMSSD, series).hrvBaseline((int) day.toEpochDay());
	}

	/** Eligible resting heart rates from a day (inclusive) to a day (exclusive). */
	int countRhr(LocalDate from, LocalDate to, Series series) {
		return column(Kind.RHR, series).count((int) from.toEpochDay(), (int) to.toEpochDay());
	}

	/** Eligible RMSSD readings from a day (inclusive) to a day (exclusive). */
	int countHrv(LocalDate from, LocalDate to, Series series) {
		return column(Kind.LN_RMSSD, series).count((int) from.toEpochDay(), (int) to.toEpochDay());
	}

	private Column column(Kind kind, Series series) {
		return this.known.readings().of(kind, series, this.out, this.rules);
	}

	/** ln RMSSD of the last mornings up to a day, of mornings without any symptom. */
	List<Double> recentLn(LocalDate day, Series series) {
		List<Double> values = new ArrayList<>();
		for (Morning morning : this.known.lastMornings(this.rules.hrv().days(), day)) {
			Double ln = morning.ln();
			if (ln != null && this.known.readings().isOf(series, morning.effective()) && !isOut(morning)) {
				values.add(ln);
			}
		}
		return values;
	}

	private boolean isOut(Morning morning) {
		return this.known.isSlip(morning.day())
				|| this.known.sickness(morning.effective(), this.rules).isOutOfBaseline();
	}

}
