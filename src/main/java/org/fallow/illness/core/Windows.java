package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

import org.fallow.baseline.HrvBaseline;
import org.fallow.baseline.RhrBaseline;
import org.fallow.baseline.Series;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
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
		Method method = entry.method();
		Posture posture = entry.posture();
		if (method == null || posture == null) {
			return null;
		}
		return new Series(method, posture, this.known.isOnMedicine(entry.day()));
	}

	static @Nullable Double usableRhr(MorningEntry entry) {
		return entry.unsure() ? null : entry.rhrBpm();
	}

	static @Nullable Double usableLn(MorningEntry entry) {
		Double rmssd = entry.unsure() ? null : entry.rmssdMs();
		return (rmssd == null) ? null : Math.log(rmssd);
	}

	/** Series of the latest resting heart rate up to a day; null if there is none. */
	@Nullable Series latestRhrSeries(LocalDate day) {
		return latestSeries(day, Windows::usableRhr);
	}

	/** Series of the latest RMSSD up to a day; null if there is none. */
	@Nullable Series latestHrvSeries(LocalDate day) {
		return latestSeries(day, Windows::usableLn);
	}

	/** Day of the latest resting heart rate up to a day; null if there is none. */
	@Nullable LocalDate latestRhrDay(LocalDate day) {
		MorningEntry latest = latest(day, Windows::usableRhr);
		return (latest == null) ? null : latest.day();
	}

	private @Nullable Series latestSeries(LocalDate day, Function<MorningEntry, @Nullable Double> value) {
		MorningEntry latest = latest(day, value);
		return (latest == null) ? null : series(latest);
	}

	private @Nullable MorningEntry latest(LocalDate day, Function<MorningEntry, @Nullable Double> value) {
		for (Morning morning : this.known.mornings(day.minusDays(LOOK_BACK_DAYS), day.plusDays(1))
			.descendingMap()
			.values()) {
			if (value.apply(morning.effective()) != null) {
				return morning.effective();
			}
		}
		return null;
	}

	/** Baseline of a day from the readings before it, held ones apart. */
	@Nullable RhrBaseline rhrBaseline(LocalDate day, @Nullable Series series) {
		return (series == null) ? null : RhrBaseline.of(rhrReadings(day, series), this.rules.baseline());
	}

	double[] rhrReadings(LocalDate day, Series series) {
		return baselineReadings(day, series, Windows::usableRhr);
	}

	@Nullable HrvBaseline hrvBaseline(LocalDate day, @Nullable Series series) {
		return (series == null) ? null
				: HrvBaseline.of(baselineReadings(day, series, Windows::usableLn), this.rules.baseline());
	}

	private double[] baselineReadings(LocalDate day, Series series, Function<MorningEntry, @Nullable Double> value) {
		RuleSet.Baseline numbers = this.rules.baseline();
		List<Double> window = eligible(day.minusDays(numbers.windowDays()), day, series, value);
		if (window.size() < numbers.fewReadings()) {
			List<Double> older = eligible(day.minusDays(numbers.fallbackDays()), day, series, value);
			window = older.subList(Math.max(0, older.size() - numbers.fallbackReadings()), older.size());
		}
		return window.stream().mapToDouble(Double::doubleValue).toArray();
	}

	/** Eligible resting heart rates from a day (inclusive) to a day (exclusive). */
	int countRhr(LocalDate from, LocalDate to, Series series) {
		return eligible(from, to, series, Windows::usableRhr).size();
	}

	/** Eligible RMSSD readings from a day (inclusive) to a day (exclusive). */
	int countHrv(LocalDate from, LocalDate to, Series series) {
		return eligible(from, to, series, Windows::usableLn).size();
	}

	private List<Double> eligible(LocalDate from, LocalDate to, Series series,
			Function<MorningEntry, @Nullable Double> value) {
		List<Double> values = new ArrayList<>();
		for (Morning morning : this.known.mornings(from, to).values()) {
			MorningEntry entry = morning.effective();
			Double reading = value.apply(entry);
			if (reading != null && series.equals(series(entry)) && !isOut(entry)) {
				values.add(reading);
			}
		}
		return values;
	}

	private boolean isOut(MorningEntry entry) {
		return this.out.stream().anyMatch((range) -> range.contains(entry.day()))
				|| this.known.sickness(entry, this.rules.opening().feverCelsius()).isOutOfBaseline();
	}

	/** ln RMSSD of the last mornings up to a day, of mornings without any symptom. */
	List<Double> recentLn(LocalDate day, Series series) {
		List<Double> values = new ArrayList<>();
		LocalDate from = day.minusDays(this.rules.hrv().days() - 1L);
		for (Morning morning : this.known.mornings(from, day.plusDays(1)).values()) {
			MorningEntry entry = morning.effective();
			Double ln = usableLn(entry);
			if (ln != null && series.equals(series(entry))
					&& !this.known.sickness(entry, this.rules.opening().feverCelsius()).isOutOfBaseline()) {
				values.add(ln);
			}
		}
		return values;
	}

}
