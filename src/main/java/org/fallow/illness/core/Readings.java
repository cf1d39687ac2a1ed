package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import org.fallow.baseline.Column;
import org.fallow.baseline.Series;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * The readings that may enter a baseline, one column a series and kind. They are kept
 * while the facts only grow by later mornings, and gathered anew from the facts whenever
 * anything else about them changes: so they are always what gathering them anew would
 * give.
 */
final class Readings {

	private final Known known;

	private final List<Named> columns = new ArrayList<>();

	private int stamp = -1;

	private int taken;

	private @Nullable RuleSet rules;

	private List<DayRange> out = List.of();

	Readings(Known known) {
		this.known = known;
	}

	/** Resting heart rates, or ln RMSSD, of a series; without the days out. */
	Column of(Kind kind, Series series, List<DayRange> daysOut, RuleSet ruleSet) {
		bringUpToDate(daysOut, ruleSet);
		return column(kind, series, ruleSet);
	}

	/** Whether any series has a resting heart rate baseline of a day. */
	boolean hasRhrBaseline(int day, List<DayRange> daysOut, RuleSet ruleSet) {
		bringUpToDate(daysOut, ruleSet);
		return this.columns.stream()
			.anyMatch((named) -> named.kind() == Kind.RHR && named.column().rhrBaseline(day) != null);
	}

	private void bringUpToDate(List<DayRange> daysOut, RuleSet ruleSet) {
		if (this.stamp != this.known.stamp() || this.rules != ruleSet || !this.out.equals(daysOut)) {
			this.columns.clear();
			this.taken = 0;
			this.stamp = this.known.stamp();
			this.rules = ruleSet;
			this.out = List.copyOf(daysOut);
		}
		takeNewOnes(ruleSet);
	}

	private Column column(Kind kind, Series series, RuleSet ruleSet) {
		for (Named named : this.columns) {
			if (named.kind() == kind && named.series().equals(series)) {
				return named.column();
			}
		}
		Column column = new Column(ruleSet);
		this.columns.add(new Named(kind, series, column));
		return column;
	}

	private void takeNewOnes(RuleSet ruleSet) {
		List<Morning> mornings = this.known.mornings();
		while (this.taken < mornings.size()) {
			Morning morning = mornings.get(this.taken++);
			Series series = series(morning.effective());
			if (series != null && !isOut(morning.effective(), ruleSet)) {
				take(Kind.RHR, series, morning, ruleSet);
				take(Kind.LN_RMSSD, series, morning, ruleSet);
			}
			else if (series != null && morning.rhr() != null) {
				column(Kind.RHR, series, ruleSet).passOver((int) morning.day().toEpochDay());
			}
		}
	}

	private void take(Kind kind, Series series, Morning morning, RuleSet ruleSet) {
		Double value = kind.of(morning);
		if (value != null) {
			column(kind, series, ruleSet).add((int) morning.day().toEpochDay(), value);
		}
	}

	private boolean isOut(MorningEntry entry, RuleSet ruleSet) {
		for (DayRange range : this.out) {
			if (range.contains(entry.day())) {
				return true;
			}
		}
		return this.known.isSlip(entry.day()) || this.known.sickness(entry, ruleSet).isOutOfBaseline();
	}

	/** The series of an entry's measurement; null without one. */
	@Nullable Series series(MorningEntry entry) {
		Method method = entry.method();
		Posture posture = entry.posture();
		if (method == null || posture == null) {
			return null;
		}
		return new Series(method, posture, this.known.isOnMedicine(entry.day()),
				this.known.circumstances().measuredSince(method, entry.day()));
	}

	/** Whether an entry's measurement is of a series. */
	boolean isOf(Series series, MorningEntry entry) {
		return entry.method() == series.method() && entry.posture() == series.posture()
				&& this.known.isOnMedicine(entry.day()) == series.medicine() && Objects
					.equals(this.known.circumstances().measuredSince(series.method(), entry.day()), series.since());
	}

	private record Named(Kind kind, Series series, Column column) {
	}

	/** What is read from a morning; readings marked unsure are never used. */
	enum Kind {

		/** Resting heart rate, bpm. */
		RHR,
		/** Natural logarithm of RMSSD in ms. */
		LN_RMSSD;

		@Nullable Double of(Morning morning) {
			return (this == RHR) ? morning.rhr() : morning.ln();
		}

	}

}
