package org.fallow.illness.core;

import java.util.List;
import java.util.Objects;

import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.MorningEntry;
import org.jspecify.annotations.Nullable;

/**
 * A morning's reading with what was measured again beside it. Which of them enters
 * baselines follows from the facts alone; which one decides the day is for
 * {@link DayReading}. Of several of a kind the highest counts (the safer reading).
 */
final class Remeasured {

	private final List<MorningEntry> revisions;

	private final List<MeasuredAgain> again;

	private final MorningEntry entered;

	Remeasured(List<MorningEntry> revisions, List<MeasuredAgain> again) {
		this.revisions = revisions;
		this.again = again;
		this.entered = revisions.get(revisions.size() - 1);
	}

	/** The morning as entered, the last revision. */
	MorningEntry entered() {
		return this.entered;
	}

	/** The count by finger; null where none was taken beside this very reading. */
	@Nullable MeasuredAgain counted() {
		return (asksForACount() && isBeside(MeasuredAgain.Kind.COUNTED)) ? highest(MeasuredAgain.Kind.COUNTED) : null;
	}

	/** The measurement after lying; null without one. */
	@Nullable MeasuredAgain rested() {
		return highest(MeasuredAgain.Kind.RESTED);
	}

	/** Whether it is beside this very reading, which was not corrected since. */
	boolean isRestedBeside() {
		return isBeside(MeasuredAgain.Kind.RESTED);
	}

	private boolean asksForACount() {
		return FastAtRest.isCounted(Morning.usableRhr(this.entered), this.entered.posture());
	}

	/** Whether the reading asks for a count by finger that nobody took. */
	boolean isUncounted() {
		return asksForACount() && counted() == null;
	}

	/** Whether a count by finger says that the first reading is not to be trusted. */
	boolean isUnsure() {
		MeasuredAgain count = counted();
		return count != null && !isRacing(count, this.entered);
	}

	/** The first reading: that of the entry or, where it is unsure, the count. */
	MorningEntry first() {
		MeasuredAgain count = counted();
		return (count == null || isRacing(count, this.entered)) ? this.entered : taken(count);
	}

	/** The entry as measured after lying; null without such a measurement. */
	@Nullable MorningEntry second() {
		MeasuredAgain rested = rested();
		return (rested == null) ? null : taken(rested);
	}

	private MorningEntry taken(MeasuredAgain measured) {
		return this.entered.measuredAs(measured.method(), measured.posture(), measured.rhrBpm());
	}

	/** The reading that enters baselines. */
	MorningEntry ofTheDay() {
		MorningEntry second = second();
		return (second != null && isRestedBeside() && !isUncounted()) ? second : first();
	}

	/**
	 * Whether a count confirms a racing heart at rest: it is still at or above the figure
	 * of its own posture or of the first reading's, whichever is lower (the safer
	 * reading).
	 */
	static boolean isRacing(MeasuredAgain count, @Nullable MorningEntry beside) {
		double figure = FastAtRest.countFrom(count.posture());
		if (beside != null && beside.posture() != null) {
			figure = Math.min(figure, FastAtRest.countFrom(beside.posture()));
		}
		return count.kind() == MeasuredAgain.Kind.COUNTED && count.rhrBpm() >= figure;
	}

	private @Nullable MeasuredAgain highest(MeasuredAgain.Kind kind) {
		MeasuredAgain highest = null;
		for (MeasuredAgain one : this.again) {
			if (one.kind() == kind && (highest == null || one.rhrBpm() > highest.rhrBpm())) {
				highest = one;
			}
		}
		return highest;
	}

	private boolean isBeside(MeasuredAgain.Kind kind) {
		for (MeasuredAgain one : this.again) {
			if (one.kind() == kind && isSameReading(beside(one), this.entered)) {
				return true;
			}
		}
		return false;
	}

	/** The revision that was effective when it was measured again. */
	private MorningEntry beside(MeasuredAgain measured) {
		MorningEntry beside = null;
		for (MorningEntry revision : this.revisions) {
			boolean before = revision.recorded().compareTo(measured.recorded()) <= 0;
			beside = (before || beside == null) ? revision : beside;
		}
		return (beside == null) ? this.entered : beside;
	}

	private static boolean isSameReading(MorningEntry one, MorningEntry other) {
		return one.method() == other.method() && one.posture() == other.posture() && one.unsure() == other.unsure()
				&& other.rhrBpm() != null && Objects.equals(one.rhrBpm(), other.rhrBpm());
	}

}
