package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.baseline.Deviation;
import org.fallow.baseline.RhrBaseline;
import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Series;
import org.fallow.entry.MorningEntry;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Readings held against what is in force for their series on a day: a baseline, held or
 * not, and the figure from which on they are too fast at rest.
 *
 * @param before the state before the day
 * @param known the facts
 * @param rules the numbers
 * @param day the day that is decided
 * @param episode the open episode; absent without one
 * @param windows the windows of the readings
 */
record Judged(State before, Known known, RuleSet rules, LocalDate day, @Nullable Draft episode, Windows windows) {

	/** Which of a morning's readings decides it. */
	@Nullable DayReading chosen(LocalDate date) {
		Morning morning = this.known.morningOn(date);
		return (morning == null) ? null : DayReading.of(morning, this::taken);
	}

	@Nullable MorningEntry measured(LocalDate date) {
		DayReading chosen = chosen(date);
		return (chosen == null) ? null : chosen.entry();
	}

	private Repeat.@Nullable Taken taken(MorningEntry entry) {
		Series series = this.windows.series(entry);
		Double bpm = entry.rhrBpm();
		if (series == null || bpm == null) {
			return null;
		}
		RhrBaseline baseline = baseline(series, entry.day(), bpm);
		Deviation deviation = deviation(bpm, baseline, series, entry.day());
		double from = tooFastFrom(series, entry.day());
		RhrFlag alone = (bpm >= from) ? RhrFlag.VERY_HIGH : null;
		return new Repeat.Taken(series, bpm, from, (baseline == null) ? null : baseline.median(),
				(baseline == null) ? null : baseline.spread(), (deviation == null) ? null : deviation.dev(),
				(deviation == null) ? alone : deviation.flag());
	}

	private double tooFastFrom(Series series, LocalDate date) {
		return this.known.figures().bpm(series, date, this.known.circumstances(), this.rules.flags());
	}

	RhrEvidence.@Nullable OwnBpm ownFigure(@Nullable Series series) {
		OwnFigure own = (series == null) ? null : this.known.figures().of(series, this.day, this.known.circumstances());
		return (own == null) ? null : new RhrEvidence.OwnBpm(own.bpm(), own.day());
	}

	/** The baseline in force for a series on a day: held in and after an episode. */
	@Nullable RhrBaseline baseline(@Nullable Series series, LocalDate date, @Nullable Double reading) {
		if (series == null) {
			return null;
		}
		Held held = heldInForce(series, date);
		if (held == null) {
			return (this.episode == null) ? this.windows.rhrBaseline(date, series) : null;
		}
		Held then = held.on(date);
		return (reading == null) ? then.level() : then.levelFor(reading, this.rules.workingLevel().mostDeviation());
	}

	@Nullable Held heldInForce(Series series, LocalDate date) {
		if (this.episode != null) {
			Held held = this.episode.held;
			return (series.equals(held.series()) && this.episode.tracked) ? held : null;
		}
		return HeldBaselines.heldRhr(this.before, this.windows, series, date);
	}

	@Nullable Deviation deviation(LocalDate date) {
		MorningEntry entry = measured(date);
		Double reading = (entry == null) ? null : Morning.usableRhr(entry);
		Series series = (entry == null) ? null : this.windows.series(entry);
		if (reading == null || series == null) {
			return null;
		}
		return deviation(reading, baseline(series, date, reading), series, date);
	}

	private @Nullable Deviation deviation(double reading, @Nullable RhrBaseline baseline, Series series,
			LocalDate date) {
		return (baseline == null) ? null
				: Deviation.of(reading, baseline, tooFastFrom(series, date), this.rules.flags());
	}

	/** Whether a morning's reading is too fast for anybody at rest, baseline or none. */
	boolean isTooFast(LocalDate date) {
		MorningEntry entry = measured(date);
		Double reading = (entry == null) ? null : Morning.usableRhr(entry);
		Series series = (entry == null) ? null : this.windows.series(entry);
		return reading != null && series != null && reading >= tooFastFrom(series, date);
	}

}
