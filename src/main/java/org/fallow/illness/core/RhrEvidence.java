package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.baseline.Line;
import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Series;
import org.jspecify.annotations.Nullable;

/**
 * What a day's decision used of resting heart rate. Absent numbers are those the day did
 * not have: no reading, no baseline.
 *
 * @param series series in use
 * @param reading the day's usable reading, bpm
 * @param n eligible readings of the baseline
 * @param baseline median, bpm
 * @param spread spread, bpm
 * @param provisional whether the baseline rests on few readings
 * @param heldAsOf the day of which the baseline is, where it is held
 * @param line the baseline's line, with the readings it came from
 * @param dev deviation, bpm
 * @param low limit of low, bpm
 * @param high limit of high, bpm
 * @param flag the day's flag; without a baseline only very high, where the reading is too
 * fast for anybody at rest
 * @param starts whether the day's reading alone or with the one before is above the line,
 * standing already or not
 * @param before the earlier deviations looked at for the reading before, oldest first
 * @param aboveBefore since when it stood above the line before the day; absent if it did
 * not
 * @param above since when it stands after it; absent if it does not
 * @param last the latest morning before with a deviation; absent before the first
 * @param tooFastBefore the latest morning before whose reading was too fast, without a
 * baseline; absent if a lower one came since
 * @param keptFlag flag kept because the reading was left out
 * @param keptLow whether a second low morning is kept
 * @param keptFrom the day it is kept from
 * @param leftOut whether the reading has been left out for too long
 * @param lowAgain whether this is the second low morning
 * @param drift whether the baseline has drifted up slowly
 * @param working the working level in force; absent without one
 * @param own the held baseline's own median, bpm; absent where none is held
 * @param figure a clinician's own figure for the series; absent where the rules' is
 * @param repeat what was measured again, or was to be counted; absent where nothing was
 */
public record RhrEvidence(@Nullable Series series, @Nullable Double reading, int n, @Nullable Double baseline,
		@Nullable Double spread, boolean provisional, @Nullable LocalDate heldAsOf, @Nullable Line line,
		@Nullable Double dev, @Nullable Double low, @Nullable Double high, @Nullable RhrFlag flag, boolean starts,
		List<State.PastDeviation> before, @Nullable LocalDate aboveBefore, @Nullable LocalDate above,
		State.@Nullable Kept last, @Nullable LocalDate tooFastBefore, @Nullable RhrFlag keptFlag, boolean keptLow,
		@Nullable LocalDate keptFrom, boolean leftOut, boolean lowAgain, boolean drift, @Nullable Working working,
		@Nullable Double own, @Nullable OwnBpm figure, @Nullable Repeat repeat) {

	/** Copies the list. */
	public RhrEvidence {
		before = List.copyOf(before);
	}

	/**
	 * L of the day's reading.
	 * @return bpm above the baseline; absent without a deviation
	 */
	public @Nullable Double lineBpm() {
		return (this.dev == null || this.line == null) ? null : Double.valueOf(this.line.bpm());
	}

	/**
	 * A clinician's own figure for a person.
	 *
	 * @param bpm from here on a reading is too fast at rest, bpm
	 * @param since the day it was recorded
	 */
	public record OwnBpm(double bpm, LocalDate since) {
	}

}
