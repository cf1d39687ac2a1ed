package org.fallow.illness.core;

import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Series;
import org.jspecify.annotations.Nullable;

/**
 * What a day's decision used of a reading that was measured again, or was to be counted
 * by finger. All of it is kept; one of them is the reading of the day.
 *
 * @param entered the reading of the entry; absent where it has none
 * @param unsure whether the entry marks it as unsure
 * @param counted the count by finger; absent where none was taken
 * @param rested the measurement after lying some minutes; absent where none was taken
 * @param beside whether that one is beside the entry's reading, which was not corrected
 * since
 * @param used which one is the reading of the day
 */
public record Repeat(@Nullable Taken entered, boolean unsure, @Nullable Taken counted, @Nullable Taken rested,
		boolean beside, Use used) {

	/**
	 * Whether a reading that nobody should have at rest was not counted by finger.
	 * @return true if so
	 */
	public boolean uncounted() {
		Taken reading = this.entered;
		return reading != null && !this.unsure && this.counted == null
				&& FastAtRest.isCounted(reading.bpm(), reading.series().posture());
	}

	/**
	 * Whether a first reading gave way to one after lying: the day is easy only at best,
	 * and the morning not good.
	 * @return false after a first reading that was unsure
	 */
	public boolean givesWay() {
		return this.rested != null && !(this.beside && this.unsure);
	}

	/**
	 * The first reading: the count where it is lower than what has to be counted, else
	 * that of the entry.
	 * @return absent without one
	 */
	public @Nullable Taken first() {
		Taken reading = this.entered;
		Taken count = this.counted;
		return (reading == null || count == null || confirmed()) ? reading : count;
	}

	/**
	 * Whether the count by finger confirms a racing heart at rest.
	 * @return false without a count
	 */
	public boolean confirmed() {
		Taken reading = this.entered;
		Taken count = this.counted;
		return reading != null && count != null && count.bpm() >= Math
			.min(FastAtRest.countFrom(count.series().posture()), FastAtRest.countFrom(reading.series().posture()));
	}

	/** Which measurement is the reading of the day. */
	public enum Use {

		/** That of the entry. */
		ENTERED,
		/** The count by finger. */
		COUNTED,
		/** The one after lying. */
		RESTED

	}

	/**
	 * One measurement, judged by its own series.
	 *
	 * @param series its series
	 * @param bpm resting heart rate, bpm
	 * @param tooFastFrom from here on it is too fast at rest, bpm
	 * @param baseline the series' baseline, bpm; absent without one
	 * @param spread its spread, bpm; absent without one
	 * @param dev deviation, bpm; absent without a baseline
	 * @param flag its flag; absent without a baseline, unless it is too fast
	 */
	public record Taken(Series series, double bpm, double tooFastFrom, @Nullable Double baseline,
			@Nullable Double spread, @Nullable Double dev, @Nullable RhrFlag flag) {

		/**
		 * Whether it is high or very high.
		 * @return true if so
		 */
		public boolean high() {
			return this.flag != null && this.flag.isHigh();
		}

	}

}
