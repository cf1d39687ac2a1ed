package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.Deviation;
import org.fallow.baseline.HrvBaseline;
import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.RhrBaseline;
import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Series;
import org.fallow.baseline.Statistics;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.core.State.Kept;
import org.fallow.illness.core.State.PastDeviation;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * A day's numbers: baselines, deviation, flags, the line, heart-rate variability.
 */
final class Numbers {

	private final State before;

	private final Known known;

	private final RuleSet rules;

	private final LocalDate day;

	private final @Nullable Draft episode;

	private final Windows windows;

	private final Judged judged;

	Numbers(State before, Known known, RuleSet rules, LocalDate day, @Nullable Draft episode, Windows windows) {
		this.before = before;
		this.known = known;
		this.rules = rules;
		this.day = day;
		this.episode = episode;
		this.windows = windows;
		this.judged = new Judged(before, known, rules, day, episode, windows);
	}

	RhrEvidence rhr() {
		DayReading chosen = this.judged.chosen(this.day);
		MorningEntry entry = (chosen == null) ? null : chosen.entry();
		Double reading = (entry == null) ? null : Morning.usableRhr(entry);
		Series series = seriesInUse(entry, reading);
		RhrBaseline baseline = this.judged.baseline(series, this.day, reading);
		Held held = (series == null) ? null : this.judged.heldInForce(series, this.day);
		Deviation deviation = this.judged.deviation(this.day);
		List<PastDeviation> past = past();
		boolean starts = starts(this.day, deviation, past) && !isSymptomsOnly();
		boolean tooFast = this.judged.isTooFast(this.day);
		LeftOut left = leftOut(deviation, reading);
		int n = (baseline != null) ? baseline.n() : readings(series);
		return new RhrEvidence(series, reading, n, (baseline == null) ? null : baseline.median(),
				(baseline == null) ? null : baseline.spread(),
				baseline != null && baseline.isProvisional(this.rules.baseline()), heldAsOf(held),
				(baseline == null) ? null : baseline.line(), (deviation == null) ? null : deviation.dev(),
				(deviation == null) ? null : deviation.low(), (deviation == null) ? null : deviation.high(),
				(deviation != null) ? deviation.flag() : tooFast ? RhrFlag.VERY_HIGH : null, starts, past,
				this.before.above(), above(starts, deviation), this.before.kept(), this.before.tooFastOn(), left.flag(),
				left.low(), left.from(), left.tooLong(), deviation != null && isLowAgain(deviation), hasDrifted(series),
				(held == null) ? null : held.working(),
				(held == null || held.rhr() == null) ? null : held.rhr().median(), this.judged.ownFigure(series),
				(chosen == null) ? null : chosen.repeat());
	}

	/** What a reading that is left out keeps; one too fast is kept with no baseline. */
	private LeftOut leftOut(@Nullable Deviation deviation, @Nullable Double reading) {
		LocalDate fast = this.before.tooFastOn();
		if (reading == null && fast != null) {
			return new LeftOut(isKept(fast) ? RhrFlag.VERY_HIGH : null, false, fast, !isKept(fast));
		}
		Kept kept = (deviation == null && !isSymptomsOnly()) ? this.before.kept() : null;
		if (kept != null && isKept(kept.day())) {
			return new LeftOut(kept.flag(), kept.lowAgain(), leftOutSince(kept), false);
		}
		return new LeftOut(null, false, leftOutSince(kept), isLeftOut(deviation, kept));
	}

	private record LeftOut(@Nullable RhrFlag flag, boolean low, @Nullable LocalDate from, boolean tooLong) {
	}

	private boolean isKept(LocalDate from) {
		return apart(from) <= this.rules.flags().keptMornings();
	}

	private @Nullable Series seriesInUse(@Nullable MorningEntry entry, @Nullable Double reading) {
		return (entry != null && reading != null) ? this.windows.series(entry)
				: this.windows.latestRhrSeries(this.day.minusDays(1));
	}

	private int readings(@Nullable Series series) {
		return (series == null || this.episode != null) ? 0 : this.windows.rhrReadings(this.day, series);
	}

	private @Nullable LocalDate heldAsOf(@Nullable Held held) {
		if (this.episode != null) {
			return this.episode.held.asOf();
		}
		return (held == null) ? null : held.asOf();
	}

	/** The latest comparable reading: from there flags are kept and silence counts. */
	private @Nullable LocalDate leftOutSince(@Nullable Kept kept) {
		return (kept != null) ? kept.day() : this.windows.latestRhrDay(this.day.minusDays(1));
	}

	private boolean isLeftOut(@Nullable Deviation deviation, @Nullable Kept kept) {
		if (deviation != null || isSymptomsOnly()) {
			return false;
		}
		LocalDate since = leftOutSince(kept);
		Series series = (kept != null) ? kept.series() : this.windows.latestRhrSeries(this.day.minusDays(1));
		return since != null && series != null && hasBaseline(series)
				&& apart(since) > this.rules.flags().keptMornings();
	}

	private boolean hasBaseline(Series series) {
		return this.judged.baseline(series, this.day, null) != null;
	}

	/**
	 * Earlier deviations in the windows, as decided then; recomputed for a morning that a
	 * fact recorded today speaks of.
	 */
	private List<PastDeviation> past() {
		int lookBack = this.rules.line().apartDays();
		if (!this.known.hasLate(this.day)) {
			return since(this.before.deviations(), lookBack);
		}
		List<PastDeviation> past = new ArrayList<>();
		for (LocalDate date = this.day.minusDays(lookBack); date.isBefore(this.day); date = date.plusDays(1)) {
			PastDeviation found = this.known.isFresh(date) ? recomputed(date) : carried(date);
			if (found != null) {
				past.add(found);
			}
		}
		return past;
	}

	private List<PastDeviation> since(List<PastDeviation> deviations, int days) {
		List<PastDeviation> past = new ArrayList<>(deviations.size());
		for (PastDeviation deviation : deviations) {
			if (apart(deviation.day()) <= days) {
				past.add(deviation);
			}
		}
		return past;
	}

	private @Nullable PastDeviation recomputed(LocalDate date) {
		Deviation deviation = this.judged.deviation(date);
		MorningEntry entry = this.judged.measured(date);
		Series series = (entry == null) ? null : this.windows.series(entry);
		PastDeviation then = carried(date);
		return (deviation == null || series == null) ? null
				: new PastDeviation(date, deviation.dev(), series, then == null || then.late());
	}

	private @Nullable PastDeviation carried(LocalDate date) {
		for (PastDeviation past : this.before.deviations()) {
			if (past.day().equals(date)) {
				return past;
			}
		}
		return null;
	}

	/** Whether an earlier morning's reading, as it is known now, makes it a bad one. */
	boolean isBad(LocalDate date, List<PastDeviation> past) {
		return this.judged.isTooFast(date) || starts(date, this.judged.deviation(date), past);
	}

	private boolean starts(LocalDate date, @Nullable Deviation deviation, List<PastDeviation> past) {
		MorningEntry entry = this.judged.measured(date);
		Series series = (entry == null) ? null : this.windows.series(entry);
		return deviation != null && series != null
				&& AboveTheLine.starts(deviation, series, past, date, this.rules.line());
	}

	/** Since when it stands above the line after today; null if it does not. */
	private @Nullable LocalDate above(boolean starts, @Nullable Deviation deviation) {
		LocalDate since = this.before.above();
		if (isSymptomsOnly() || (this.episode != null && !this.episode.tracked)) {
			return null;
		}
		if (starts) {
			return (since == null) ? this.day : since;
		}
		if (since == null || deviation == null) {
			return (since != null && hasAnyBaseline()) ? since : null;
		}
		return (deviation.dev() < this.rules.line().endsBelow()) ? null : since;
	}

	private boolean hasAnyBaseline() {
		if (this.episode != null || this.windows.hasRhrBaseline(this.day)) {
			return true;
		}
		Held held = this.before.afterClose();
		Series series = (held == null) ? null : held.series();
		return series != null && this.judged.heldInForce(series, this.day) != null;
	}

	private boolean isLowAgain(Deviation today) {
		Kept last = this.before.kept();
		return today.flag() == RhrFlag.LOW && last != null && last.flag() == RhrFlag.LOW
				&& apart(last.day()) <= this.rules.flags().lowApartDays();
	}

	private boolean isSymptomsOnly() {
		return this.episode != null && this.episode.symptomsOnly;
	}

	private boolean hasDrifted(@Nullable Series series) {
		RhrBaseline now = this.judged.baseline(series, this.day, null);
		if (now == null || series == null) {
			return false;
		}
		RhrBaseline then = this.windows.rhrBaseline(this.day.minusDays(this.rules.baseline().driftDays()), series);
		return then != null && now.median() - then.median() >= this.rules.baseline().driftBpm();
	}

	private static double[] plain(List<Double> values) {
		double[] plain = new double[values.size()];
		for (int i = 0; i < plain.length; i++) {
			plain[i] = values.get(i);
		}
		return plain;
	}

	private long apart(LocalDate earlier) {
		return this.day.toEpochDay() - earlier.toEpochDay();
	}

	HrvEvidence hrv() {
		Series series = (this.episode != null) ? this.episode.held.hrvSeries() : this.windows.latestHrvSeries(this.day);
		if (series == null) {
			return new HrvEvidence(0, null, null, List.of(), null, null);
		}
		HrvBaseline baseline = (this.episode != null) ? this.episode.held.hrv()
				: HeldBaselines.hrv(this.before, this.windows, series, this.day);
		List<Double> values = this.windows.recentLn(this.day, series);
		Double recent = (values.size() < this.rules.hrv().leastReadings()) ? null : Statistics.mean(plain(values));
		HrvFlag flag = null;
		if (baseline != null && recent != null) {
			boolean low = HrvFlag.isSuppressed(recent, baseline.mean(), baseline.sd(), this.rules.hrv());
			flag = low ? HrvFlag.SUPPRESSED : HrvFlag.NORMAL;
		}
		return new HrvEvidence((baseline == null) ? 0 : baseline.n(), (baseline == null) ? null : baseline.mean(),
				(baseline == null) ? null : baseline.sd(), values, recent, flag);
	}

}
