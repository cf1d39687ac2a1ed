package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Series;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Clinicians' own figures for a person: from which reading on a series is too fast at
 * rest, instead of the rules' figure. A figure is for the series as it was measured when
 * it was recorded: with another medicine, device or place it is another series.
 */
final class OwnFigures {

	private final List<IllnessEvent> told = new ArrayList<>();

	OwnFigures copy() {
		OwnFigures copy = new OwnFigures();
		copy.told.addAll(this.told);
		return copy;
	}

	/** Takes in what is about a figure. */
	void add(IllnessEvent event) {
		if (event instanceof OwnFigure || event instanceof OwnFigureEnded) {
			this.told.add(event);
		}
	}

	/** The figure in force for a series on a day; null where the rules' own is. */
	@Nullable OwnFigure of(Series series, LocalDate day, Circumstances circumstances) {
		OwnFigure latest = null;
		for (IllnessEvent event : this.told) {
			if (event instanceof OwnFigure figure && !figure.day().isAfter(day)
					&& isOf(figure, series, circumstances)) {
				latest = figure;
			}
			else if (event instanceof OwnFigureEnded ended && !ended.day().isAfter(day)
					&& ended.method() == series.method() && ended.posture() == series.posture()) {
				latest = null;
			}
		}
		return latest;
	}

	private static boolean isOf(OwnFigure figure, Series series, Circumstances circumstances) {
		return figure.method() == series.method() && figure.posture() == series.posture()
				&& circumstances.isOnMedicine(figure.day()) == series.medicine()
				&& Objects.equals(circumstances.measuredSince(figure.method(), figure.day()), series.since());
	}

	/** From which reading on a series is too fast: never below the rules' figure, bpm. */
	double bpm(Series series, LocalDate day, Circumstances circumstances, RuleSet.Flags rules) {
		double usual = RhrFlag.tooFastFrom(series.posture(), rules);
		OwnFigure own = this.told.isEmpty() ? null : of(series, day, circumstances);
		return (own == null) ? usual : Math.max(usual, own.bpm());
	}

}
