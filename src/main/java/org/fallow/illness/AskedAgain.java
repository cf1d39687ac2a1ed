package org.fallow.illness;

import java.time.Instant;
import java.time.LocalDate;

import org.fallow.entry.MorningEntry;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Repeat;
import org.fallow.illness.core.RhrEvidence;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What a morning that is saved asks the athlete at once.
 *
 * @param day the morning
 * @param entry the entry; absent without one with a reading
 * @param since when its reading was first recorded; absent without one
 * @param counts whether red flags and a count by finger are asked
 * @param racing whether a count by finger confirmed a racing heart at rest
 * @param high whether the first reading is high, unsure ones apart
 * @param restedBpm the measurement after lying, bpm; absent before it
 * @param countedBpm the count by finger, bpm; absent before it
 * @param feels whether it is asked if anything aches or feels off
 */
public record AskedAgain(LocalDate day, @Nullable MorningEntry entry, @Nullable Instant since, boolean counts,
		boolean racing, boolean high, @Nullable Double restedBpm, @Nullable Double countedBpm, boolean feels) {

	/**
	 * What an assessment asks.
	 * @param day the day
	 * @param entry its entry; absent where nobody needs it
	 * @param since when its reading was first recorded; absent likewise
	 * @return what is asked
	 */
	public static AskedAgain of(DayAssessment day, @Nullable MorningEntry entry, @Nullable Instant since) {
		RhrEvidence rhr = day.rhr();
		Repeat repeat = rhr.repeat();
		Repeat.Taken first = (repeat == null) ? null : repeat.first();
		boolean once = repeat == null && rhr.reading() != null && rhr.flag() != null && rhr.flag().isHigh();
		boolean high = once
				|| (repeat != null && first != null && first.high() && !(repeat.unsure() && repeat.counted() == null));
		return new AskedAgain(day.day(), entry, since, repeat != null && repeat.uncounted(),
				repeat != null && repeat.confirmed(), high,
				(repeat == null || repeat.rested() == null) ? null : Double.valueOf(repeat.rested().bpm()),
				(repeat == null || repeat.counted() == null) ? null : Double.valueOf(repeat.counted().bpm()),
				day.notices().stream().map(Message::code).anyMatch("advised.ask-symptoms"::equals));
	}

	/**
	 * Whether it is asked to lie some minutes and to measure again.
	 * @return true after a high reading that nothing was measured beside yet
	 */
	public boolean rests() {
		return this.high && !this.counts && !this.racing && this.restedBpm == null;
	}

	/**
	 * Whether anything is asked.
	 * @return false where the entry asks nothing
	 */
	public boolean anything() {
		return this.counts || this.racing || rests() || this.feels;
	}

}
